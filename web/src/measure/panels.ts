/** Everything of measuring that the page fetches when it is wanted, in one piece. */
import './measure.css';

export { FlowPanel } from './flow-panel.tsx';
export { HeightPanel } from './height-panel.tsx';
export { FlowBeside, HeightBeside, MeasuredFlow, MeasuredHeight } from './measured-lines.tsx';
export { measuredMetres } from './results.ts';
