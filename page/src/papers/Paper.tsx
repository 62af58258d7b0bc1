// A paper of the core, block by block: the same words, numbers and figures that the command line sets as PDF.
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { Mark, type LimitState } from '../ui/parts';
import { PaperFoot } from './PaperFoot';

/** What `papers` answers (src/holdback/api/papers_json.cpp). */
export interface PaperText {
  kind: string;
  file: string;
  title: string;
  subject: string;
  date: string;
  cover: boolean;
  one_page: boolean;
  size: number;
  blocks: any[];
}

const room = 284; // [mm] of the sheet on screen, with its padding, that still prints on one A4 or Letter page scaled to it
const pixels = 96 / 25.4; // in a millimetre
const least = 0.7; // no smaller: it is read at a machine

export function Paper({ paper }: { paper: PaperText }) {
  const sheet = useRef<HTMLElement>(null);
  const [scale, setScale] = useState(1);
  useLayoutEffect(() => setScale(1), [paper]);
  // A card is set smaller by steps until it keeps to its page.
  useLayoutEffect(() => {
    const element = sheet.current;
    if (!paper.one_page || !element || scale <= least) return;
    if (element.scrollHeight > room * pixels) setScale(Math.max(least, scale - 0.05));
  }, [paper, scale]);
  const top = Math.min(...paper.blocks.map((one) => (one.block === 'heading' ? one.level : 3)));
  return (
    <article ref={sheet} class={`paper set ${paper.one_page ? 'onepage' : 'flowing'}`} aria-label={`${paper.title}: ${paper.subject}`} style={{ '--set': `${(paper.size * scale).toFixed(2)}pt` }}>
      <header>
        <p class="paperkind">{kinds[paper.kind] ?? paper.title}</p>
        <h2>{paper.title}</h2>
        <p>{paper.subject}{paper.date ? `, ${paper.date}` : ''}</p>
      </header>
      {paper.blocks.map((block, i) => <Block key={i} block={block} top={top} />)}
      <PaperFoot />
    </article>
  );
}

export const kinds: Record<string, string> = {
  selection_report: 'Selection report', setup_card: 'Set-up card', maintenance_card: 'Maintenance card',
  commissioning_sheet: 'Commissioning sheet', comparison: 'Comparison', change_list: 'Change list',
};

/** A scene of the core. Its room is known before the picture is drawn, so that a card can be made to fit. */
function Figure({ figure }: { figure: any }) {
  const [, width = '180', height = '110'] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(figure.svg) ?? [];
  return <img class="paperfigure" src={`data:image/svg+xml;charset=utf-8,${encodeURIComponent(figure.svg)}`} alt={`${figure.title}. ${figure.description}`} style={{ width: `${figure.share * 100}%`, aspectRatio: `${width} / ${height}` }} />;
}

/** A heading below the paper's own title, no level left out. */
function Title({ level, text }: { level: number; text: string }) {
  if (level <= 0) return <h3 class="chapter">{text}</h3>;
  return level === 1 ? <h4>{text}</h4> : <h5>{text}</h5>;
}

function Block({ block, top }: { block: any; top: number }) {
  switch (block.block) {
    case 'heading': return <Title level={block.level - top} text={block.text} />;
    case 'paragraph': return <p class={block.tone}>{block.text}</p>;
    case 'items': return block.numbered
      ? <ol>{block.items.map((one: string, i: number) => <li key={i}>{one}</li>)}</ol>
      : <ul>{block.items.map((one: string, i: number) => <li key={i}>{one}</li>)}</ul>;
    case 'facts': return (
      <dl class={`papergrid${block.large ? ' far' : ''}`} style={{ gridTemplateColumns: `repeat(${block.columns}, 1fr)` }}>
        {block.facts.map((one: any, i: number) => <div key={i}><dt>{one.label}</dt><dd>{one.value}</dd></div>)}
      </dl>
    );
    case 'table': return <TableBlock table={block} />;
    case 'figure': return <Figure figure={block} />;
    case 'equation': return (
      <div class="equation">
        <p class="strong">{block.name}</p>
        <p class="formula">{block.formula}</p>
        <p class="formula">{block.put_in}</p>
        <p class="formula strong">{block.result}</p>
        {block.source ? <p class="muted">{block.source}</p> : null}
      </div>
    );
    case 'warning': return <p class="signal"><strong>⚠ {block.signal}</strong> {block.text}</p>;
    case 'verdict': return <p class={`verdictline ${block.state}`}><Mark state={block.state as LimitState} /> {block.text}</p>;
    case 'page_break': return <div class="newpage" />;
    default: return null;
  }
}

function TableBlock({ table }: { table: any }) {
  const hasHead = table.columns.some((one: any) => one.head || one.unit);
  return (
    <table class={`plain${table.large ? ' far' : ''}`}>
      {table.caption ? <caption>{table.caption}</caption> : null}
      {hasHead ? (
        <thead><tr>{table.columns.map((one: any, i: number) => <th key={i} scope="col" class={one.number ? 'number' : ''}>{one.head}{one.unit ? <span class="unit"> [{one.unit}]</span> : null}</th>)}</tr></thead>
      ) : null}
      <tbody>
        {table.rows.map((row: any[], r: number) => (
          <tr key={r} style={table.row_height > 0 ? { height: `${table.row_height}mm` } : {}}>
            {table.columns.map((column: any, c: number) => {
              const cell = row[c] ?? { text: '' };
              return <td key={c} class={`${column.number ? 'number ' : ''}${cell.tone ?? ''}`}>{cell.state ? <Mark state={cell.state as LimitState} /> : null}{cell.state ? ' ' : ''}{cell.text}</td>;
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
