/** The entry of the bundle `server/dist/server.js`: the one file that does something when it is loaded. */
import { startFromArguments } from './main';

startFromArguments();
