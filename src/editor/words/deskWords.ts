import { deskWords } from './en/desk.ts';
import { bring } from './t.ts';

// Whatever says these words imports this: it comes in the same file, and the first page goes without.
bring(deskWords);
