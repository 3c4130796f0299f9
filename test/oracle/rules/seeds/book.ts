/** What the makers of seeds work with: the clean builds, and a short way to write a seed down. */
import type { CleanBuild } from '../builds';
import { type Hardware, hardwareOf } from '../mutate';
import type { Place, Seed, SeedEdit } from '../seed';

export interface Book {
  readonly builds: readonly CleanBuild[];
  hardware(build: string): Hardware;
}

export type MakeSeeds = (book: Book) => readonly Seed[];

export function openBook(builds: readonly CleanBuild[]): Book {
  const hardware = new Map(builds.map((build) => [build.name, hardwareOf(build)]));
  return {
    builds,
    hardware(build) {
      const found = hardware.get(build);
      if (!found) throw new Error(`there is no build ${build}`);
      return found;
    },
  };
}

export interface More {
  readonly says?: readonly string[];
  readonly besides?: readonly string[];
  readonly silent?: true;
}

/** One seed; without `says` the place alone decides. */
export function seed(
  rule: string,
  build: string,
  about: string,
  edits: SeedEdit | readonly SeedEdit[],
  places: Place | readonly Place[],
  { says = [], besides, silent }: More = {},
): Seed {
  return {
    ...{ rule, build, about, says },
    edits: Array.isArray(edits) ? edits : [edits as SeedEdit],
    places: Array.isArray(places) ? places : [places as Place],
    ...(besides && { besides }),
    ...(silent && { silent }),
  };
}
