/** `merge`: the reports of all shards, put together. */
import { resolve } from 'node:path';
import { createTextReader } from '../../files';
import { mergeReports } from '../check/merge';
import { exitCodeOf, type Report } from '../check/report';
import { deliver, tell } from '../deliver';
import { readReport } from '../print/json';
import { printReport, REPORT_FORMATS } from '../print/report';
import { type CommandSpec, formatOption, OUTPUT, optionOf, Refusal } from '../spec';

export const merge: CommandSpec = {
  name: 'merge',
  summary: 'Puts the JSON reports of all shards together into what one run would have given.',
  places: { words: 'report ...', least: 1, most: Number.POSITIVE_INFINITY, names: 'file' },
  options: [formatOption(REPORT_FORMATS), OUTPUT],
  about: [
    'A report is what wiretrue check --format json wrote. Of shards all have to be there, each once; reports that are no shards have to be of different sketches. All have to come from the same version, and to name files from the same folder.',
    'A single report is printed in another format that way. The text shows lines out of the files as they lie in the current folder now, and no lines where they are not there.',
  ],
  exits: [
    [0, 'none of the reports has an error or a warning'],
    [1, 'one of them has'],
    [2, 'something could not be checked, or a report is missing, twice there or cannot be read'],
  ],
  examples: [
    ['merge report-*.json', 'what eight machines found, as text'],
    ['merge --format junit -o report.xml report-*.json', 'the same for a build server'],
  ],
  async run(given, here) {
    const reports = given.places.map((file): [string, Report] => {
      const text = createTextReader().read(resolve(here.base, file));
      const read = text.ok ? readReport(text.text) : text;
      if (!read.ok) {
        throw new Refusal(`${file}: ${read.why}`);
      }
      return [file, read.report];
    });
    const merged = mergeReports(reports);
    if (!merged.ok) {
      throw new Refusal(merged.why);
    }
    const { report } = merged;
    tell(report.notes, report.problems, here);
    deliver(printReport(report, optionOf(given, 'format') ?? 'text', given, here), given, here);
    return exitCodeOf(report);
  },
};
