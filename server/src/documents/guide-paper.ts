/** The build guide: from cautions to the first power-up, one unit after the other. */
import { cautionBlocks, findingBlocks } from './cautions';
import { type Block, type Paper, type PaperInput, type Section, tableOf, textOf } from './paper';
import { powerUpSteps } from './power-up';
import { listUnits } from './subassemblies';
import { guideContext, unitBlocks } from './unit-steps';
import { wordless } from './wordless';
import { countWords } from './words';

export function guidePaper(input: PaperInput): Paper {
  const { build } = input;
  const units = listUnits(build);
  const context = guideContext(input, units);
  const lacking = wordless(input);
  const sections: Section[] = [
    { id: 'cautions', title: 'Before you begin', blocks: cautionBlocks(input) },
    { id: 'findings', title: 'Known faults', blocks: findingBlocks(input) },
    { id: 'picture', title: 'The wiring', blocks: pictureBlocks(input) },
    {
      id: 'units',
      title: 'What is built, in this order',
      blocks: tableOf(
        ['unit', 'parts', 'wires'],
        units.map(({ title, parts, wires }) => [title, String(parts.length), String(wires.length)]),
      ),
    },
    ...units.map((unit): Section => ({ id: unit.id, title: unit.title, blocks: unitBlocks(context, unit) })),
    { id: 'power-up', title: 'First power-up', blocks: [{ kind: 'ticks', items: powerUpSteps(input) }] },
    {
      id: 'wordless',
      title: 'Still without words',
      blocks: lacking.length === 0 ? [] : [{ kind: 'list', items: lacking }],
    },
  ];
  return {
    id: 'guide',
    title: 'Build guide',
    build: build.title,
    ...(build.revision !== undefined && { revision: build.revision }),
    facts: [
      ['Board', build.board.title],
      [
        'Holds',
        `${countWords(build.parts.length, 'part')}, ${countWords(build.wires.length, 'wire')}, ${countWords(units.length, 'unit')}`,
      ],
      ['Goes with', 'parts list, hookup list (its numbers stand before every wire) and test sheet'],
    ],
    sections: sections.filter(({ blocks }) => blocks.length > 0),
  };
}

function pictureBlocks({ build, picture }: PaperInput): readonly Block[] {
  if (!picture) return [textOf('There is no picture of the wiring yet. The hookup list tells every wire.')];
  return [{ kind: 'picture', picture, alt: `Wiring of ${build.title}` }];
}
