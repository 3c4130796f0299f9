/** A library of invented classes that uses every kind of fact, so that the tests do not depend on the real data. */
import type { LibraryFacts } from '../../../server/src/base/platform';
import { libraries } from './platform';

const invented: LibraryFacts = {
  id: 'invented',
  headers: ['Invented.h'],
  functions: [
    { name: 'openGate', action: 'device', pin: 0, mode: 'output' },
    { name: 'closeGate', action: 'release', pinsOf: 'openGate' },
  ],
  classes: [
    {
      name: 'Probe',
      constructors: [{ name: 'Probe', action: 'device', pin: 0, mode: 'input' }],
      methods: [
        { name: 'measure', action: 'read', pinsOf: 'Probe' },
        { name: 'begin', action: 'device', pinsOf: 'Probe', mode: 'input-pullup' },
      ],
    },
    {
      name: 'Panel',
      constructors: [
        { name: 'Panel', action: 'device', pin: 0, mode: 'output', arguments: { max: 2 } },
        { name: 'Panel', action: 'device', pin: 1, noPin: 255, mode: 'output', arguments: { max: 2 } },
        { name: 'Panel', action: 'device', pinsFrom: 0, noPin: -1, mode: 'output', arguments: { min: 3 } },
      ],
      methods: [{ name: 'clear', action: 'transfer' }],
    },
    {
      name: 'Matrix',
      constructors: [
        { name: 'Matrix', action: 'device', pin: 0, pinIsArray: true, mode: 'input-pullup' },
        { name: 'Matrix', action: 'device', pin: 1, pinIsArray: true, mode: 'output' },
      ],
      methods: [{ name: 'onKey', action: 'read', handler: 0 }],
    },
    {
      name: '*_Strip',
      constructors: [{ name: '*_Strip', action: 'device', pin: 1 }],
      methods: [{ name: 'begin', action: 'device', pinsOf: '*_Strip', mode: 'output' }],
    },
    {
      name: 'Chain',
      methods: [{ name: 'add', action: 'device', templatePin: 1, mode: 'output' }],
      objects: ['Chains'],
    },
    { name: 'Line', methods: [{ name: 'begin', action: 'bus', roles: ['line'] }], objects: ['TheLine'] },
    { name: 'Void', methods: [{ name: 'begin', action: 'bus', roles: ['nowhere'] }], objects: ['TheVoid'] },
    {
      name: 'FineProbe',
      bases: ['Probe'],
      constructors: [{ name: 'FineProbe', action: 'device', pin: 1 }],
      methods: [],
    },
    {
      name: 'OtherChip',
      macros: ['NOT_THIS_CHIP'],
      methods: [{ name: 'begin', action: 'device', pin: 0 }],
      objects: ['Other'],
    },
  ],
};

export const inventedLibraries: readonly LibraryFacts[] = [...libraries, invented];
