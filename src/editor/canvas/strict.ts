import { useStrictMode as setStrictMode } from 'react-konva';

/**
 * Konva nodes show the design and never hold it: without strict mode a node keeps a place that React did
 * not give it, because properties that did not change are skipped.
 */
setStrictMode(true);
