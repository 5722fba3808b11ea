import { deskWords } from './desk.ts';
import { letteringWords } from './lettering.ts';
import { pagesWords } from './pages.ts';
import { sawWords } from './saw.ts';

/** Words that the first page does without: each table comes with the part of the page that says it. */
export const late = { ...deskWords, ...sawWords, ...letteringWords, ...pagesWords } as const;
