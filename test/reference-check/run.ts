import { checkFolder } from './check-folder';
import { disputed, type Disputed } from './disputed';
import { topics } from './topics/index';

const args = process.argv.slice(2);
const onlyAt = args.indexOf('--only');
const only = onlyAt < 0 ? '' : (args[onlyAt + 1] ?? '');
const folder = args.find((arg, i) => !arg.startsWith('--') && (onlyAt < 0 || i !== onlyAt + 1));

const reports = checkFolder(folder ?? 'test/reference', topics, only);
const width = Math.max(0, ...reports.map((report) => report.file.length));
let passed = 0;
let failed = 0;
for (const { file, figures } of reports) {
  const count = (state: string) => figures.filter(({ figure }) => figure.state === state).length;
  const [good, bad, absent] = [count('passed'), count('failed'), count('not covered')];
  console.log(`${file.padEnd(width)}  ${good} passed, ${bad} failed, ${absent} not covered`);
  passed += good;
  failed += bad + absent;
}
const settled = new Set<Disputed>();
for (const { file, figures, isAnswered } of reports) {
  if (!isAnswered) console.log(`${file}: nothing answers its topic`);
  for (const { id, figure, why } of isAnswered ? figures : []) {
    const dispute = disputed.find((d) => d.file === file && d.id === id && d.at === figure.at);
    if (dispute !== undefined && figure.state === 'failed') settled.add(dispute);
    if (figure.state === 'passed' || dispute !== undefined) continue;
    const cause = why === undefined ? '' : ` (${why})`;
    console.log(
      `${file} ${id} ${figure.at}: wanted ${said(figure.wanted)}, got ${said(figure.got)}, ` +
        `tolerance ${figure.tolerance}${cause}`,
    );
  }
}
if (settled.size > 0) {
  console.log(`${settled.size} figures are believed to be wrong in the sets and are left failing:`);
  for (const { file, id, at, working } of settled) console.log(`${file} ${id} ${at}: ${working}`);
  failed -= settled.size;
}
console.log(`${passed} passed, ${failed} failed`);
if (failed > 0 || passed === 0) process.exitCode = 1;

function said(value: unknown): string {
  return value === undefined ? 'nothing' : JSON.stringify(value);
}
