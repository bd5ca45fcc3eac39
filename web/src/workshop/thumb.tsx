import type { SiteDocument } from '../state/site-document.ts';
import type { Box } from './thumbnails.ts';
import { HEIGHT, outlineOf, thumbnailOf, WIDTH } from './thumbnails.ts';

/** Source, drive line, ram, delivery line and tank in a box; what is not known is not drawn. */
export function Thumb({ document, box }: { readonly document: SiteDocument; readonly box: Box }) {
  const { source, ram, tank } = thumbnailOf(outlineOf(document), box);
  return (
    <svg className="thumb" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true" focusable="false">
      <path
        className="grid"
        d={`M0 ${HEIGHT * 0.25}H${WIDTH}M0 ${HEIGHT * 0.5}H${WIDTH}M0 ${HEIGHT * 0.75}H${WIDTH}M${WIDTH / 4} 0V${HEIGHT}M${WIDTH / 2} 0V${HEIGHT}M${WIDTH * 0.75} 0V${HEIGHT}`}
      />
      {source !== undefined && (
        <>
          <path className="drive" d={`M${source.x} ${source.y}L${ram.x} ${ram.y}`} />
          <path className="surface" d={`M${source.x - 6} ${source.y}h8`} />
        </>
      )}
      {tank !== undefined && (
        <>
          <path className="delivery" d={`M${ram.x} ${ram.y}L${tank.x} ${tank.y}`} />
          <path className="water" d={`M${tank.x - 2} ${tank.y}h9v7h-9z`} />
          <path className="tank" d={`M${tank.x - 2} ${tank.y - 2}v9h9v-9`} />
        </>
      )}
      <path className="ram" d={`M${ram.x - 4} ${ram.y - 4}h9v8h-9z`} />
      {source === undefined && (
        <text x={ram.x - 3} y={ram.y - 10}>
          ?
        </text>
      )}
    </svg>
  );
}
