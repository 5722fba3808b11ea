import { createContext } from 'react';
import type { PartArray } from '../../../design/schema.ts';

/** The array whose member the fields within change; null: fields change the part itself. */
export const MemberContext = createContext<PartArray | null>(null);
