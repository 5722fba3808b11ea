import { memo, useId } from 'react';
import type { DrawItem, Drawing, GroupItem, ImageItem, PathItem, TextItem } from '../../drawing/drawing.ts';
import { type Matrix, matrixOf, matrixOfImage } from '../../drawing/transform.ts';
import { pathData } from './svgPath.ts';

interface DrawingViewProps {
  readonly drawing: Drawing;
  /** What it shows, for those who do not see it. */
  readonly label: string;
  /** More than the label says: figures that the drawing holds. */
  readonly description?: string | undefined;
  readonly className?: string | undefined;
  /** The drawing is a sheet of paper: it is drawn with its edges, and not on a card. */
  readonly sheet?: boolean | undefined;
}

/**
 * A display list on screen, on a card of paper whatever the theme: drawings are made for ink on white, and
 * what is on screen should look like what will be printed.
 */
export const DrawingView = memo(function DrawingView(props: DrawingViewProps) {
  const { drawing, label, description, className, sheet } = props;
  const id = useId();
  const { width, height } = drawing;
  return (
    <svg
      className={className ? `paper-drawing ${className}` : 'paper-drawing'}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-labelledby={`${id}-label`}
      aria-describedby={description ? `${id}-text` : undefined}
      strokeLinejoin="round"
    >
      <title id={`${id}-label`}>{label}</title>
      {sheet ? <rect className="paper-sheet" width={width} height={height} /> : null}
      {description ? <desc id={`${id}-text`}>{description}</desc> : null}
      <g transform={`matrix(1 0 0 -1 0 ${height})`}>
        <Items items={drawing.items} id={id} />
      </g>
    </svg>
  );
});

/** Items on coordinates whose y points up; `id` tells apart what they name. */
export function Items({ items, id }: { items: readonly DrawItem[]; id: string }) {
  return items.map((item, i) => {
    // Items of a drawing have no ids and never change places.
    const key = `${id}-${i}`;
    if (item.kind === 'path') return <PathShape key={key} item={item} />;
    if (item.kind === 'text') return <TextShape key={key} item={item} />;
    if (item.kind === 'image') return <ImageShape key={key} item={item} />;
    return <GroupShape key={key} item={item} id={key} />;
  });
}

function PathShape({ item }: { item: PathItem }) {
  return (
    <path
      d={pathData(item.path)}
      fill={item.fill ?? 'none'}
      fillOpacity={item.fillOpacity}
      fillRule={item.fillRule}
      stroke={item.stroke}
      strokeWidth={item.stroke === undefined ? undefined : (item.width ?? 0)}
      strokeDasharray={item.dash?.join(' ')}
      strokeLinecap={item.cap}
    />
  );
}

/** SVG text stands upright where y points down, so it is turned over once more. */
function TextShape({ item }: { item: TextItem }) {
  const { at, angle = 0 } = item;
  return (
    <text
      transform={`translate(${at.x} ${at.y}) rotate(${angle}) scale(1 -1)`}
      fontSize={item.size}
      fontWeight={item.bold ? 'bold' : undefined}
      textAnchor={item.anchor}
      fill={item.color}
    >
      {item.text}
    </text>
  );
}

function ImageShape({ item }: { item: ImageItem }) {
  return (
    <image
      width={1}
      height={1}
      preserveAspectRatio="none"
      transform={transformOf(matrixOfImage(item.corners))}
      href={`data:${item.raster.type};base64,${item.raster.data}`}
    />
  );
}

const transformOf = ({ a, b, c, d, e, f }: Matrix): string => `matrix(${a} ${b} ${c} ${d} ${e} ${f})`;

function GroupShape({ item, id }: { item: GroupItem; id: string }) {
  const clip = item.clip ? `${id}-clip` : undefined;
  return (
    <g transform={transformOf(matrixOf(item))}>
      {item.clip ? (
        <clipPath id={clip}>
          <path d={pathData(item.clip)} />
        </clipPath>
      ) : null}
      <g clipPath={clip ? `url(#${clip})` : undefined}>
        <Items items={item.items} id={id} />
      </g>
    </g>
  );
}
