import { Trash2 } from 'lucide-react';
import { Button, type ButtonProps } from './Button.tsx';

/** A small button that takes something out of a list. */
export const Remove = (props: Omit<ButtonProps, 'icon' | 'look'>) => (
  <Button icon={Trash2} look="bare icon" {...props} />
);
