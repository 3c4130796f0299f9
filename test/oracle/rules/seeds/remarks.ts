/** Remarks that let a finding be: without a reason, or with nothing there to let be. */
import { code } from '../additions';
import { type MakeSeeds, seed } from './book';

const remarks: MakeSeeds = () => [
  ...(
    [
      ['telegraph', 'wiretrue: ok unwired-pin'],
      ['scoreboard', 'wiretrue: ok idle-wire because'],
      ['ghost-ship', 'wiretrue: ok lamp-dim, it is meant so'],
      ['safe-tilt', 'wiretrue: ok mode-missing'],
      ['range-lights', 'wiretrue: ok'],
      ['quay-lights', 'wiretrue: ok idle-wire because the lamp comes next week'],
      ['winch', 'wiretrue: ok mode-missing because the library sets it'],
      ['pump-house', 'wiretrue: ok no-pwm because it only switches'],
      ['star-wall', 'wiretrue: ok unwired-pin because the star is still to be soldered'],
    ] as const
  ).map(([build, remark]) =>
    seed('ok-remark', build, remark, code({ setup: `delay(1); // ${remark}` }), [{ line: remark }]),
  ),
  seed(
    'ok-remark',
    'telegraph',
    'with its reason, where there is a finding',
    code({ setup: 'pinMode(9, OUTPUT); // wiretrue: ok unwired-pin because the lamp comes next week' }),
    [],
    { silent: true },
  ),
];

export const REMARK_SEEDS: readonly MakeSeeds[] = [remarks];
