import { useMemo } from 'react';
import { codePath } from './qrPath.ts';

/** An address as a QR code: its text, then digits in the code's own dense form for them. Always black on white. */
export function QrPicture({ text, digits, label }: { text: string; digits: string; label: string }) {
  const { d, size } = useMemo(() => codePath(text, digits), [text, digits]);
  return (
    <svg
      className="qr"
      viewBox={`0 0 ${size} ${size}`}
      role="img"
      aria-label={label}
      shapeRendering="crispEdges"
    >
      <rect width={size} height={size} fill="#ffffff" />
      <path d={d} fill="#000000" />
    </svg>
  );
}
