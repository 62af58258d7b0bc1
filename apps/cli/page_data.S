/* The page as bytes: no compiler reads two megabytes of text as fast as the assembler copies them. */
    .section .rodata
    .global holdback_page_begin
    .global holdback_page_end
holdback_page_begin:
    .incbin HOLDBACK_PAGE_FILE
holdback_page_end:
    .byte 0
    .section .note.GNU-stack,"",%progbits
