// The built page used as a person uses it. One Chromium, one check after another.
//   node browser/run.mjs [part of a name]
// HOLDBACK_CLI: the native program to compare with (default ../build/release/apps/cli/holdback).
import { runAll } from './check.mjs';
import { browse } from './open.mjs';
import { accessCheck } from './access.mjs';
import { hardshipChecks } from './hardships.mjs';
import { jobChecks } from './main-job.mjs';
import { measureChecks } from './measure.mjs';
import { runChecks } from './running.mjs';
import { workbookChecks } from './workbook.mjs';

const browser = await browse();
jobChecks(browser);
runChecks(browser);
workbookChecks(browser);
measureChecks(browser);
hardshipChecks(browser);
accessCheck(browser);
const failed = await runAll(process.argv[2]);
await browser.close();
process.exit(failed === 0 ? 0 : 1);
