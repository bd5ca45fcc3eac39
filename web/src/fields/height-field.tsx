/** The fall or the lift: written, or measured by its readings, or both. */
import type { System } from '@fallwright/units';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import type { HeightName } from '../state/measured-entry.ts';
import { hasReadings, withWrittenHeight, writtenHeight } from '../state/measured-entry.ts';
import {
  HeightBeside,
  HeightPanel,
  MeasuredHeight,
  MeasureFold,
  WhenFetched,
} from './measure-fold.tsx';
import { QuantityField } from './quantity-field.tsx';

export function HeightField({
  height,
  label,
  whenEmpty,
  example,
}: {
  readonly height: HeightName;
  readonly label: string;
  readonly whenEmpty: string;
  readonly example?: Readonly<Record<System, string>>;
}) {
  const { place } = useNotebook();
  const isMeasured = useStore(place, ({ document }) => hasReadings(document, height));
  const isBoth = useStore(
    place,
    ({ document }) =>
      hasReadings(document, height) && writtenHeight(document, height) !== undefined,
  );
  return (
    <QuantityField
      path={[height]}
      label={label}
      called={`the ${height}`}
      purpose="height"
      example={example}
      whenEmpty={
        isMeasured ? (
          <WhenFetched meanwhile="measured">
            <MeasuredHeight height={height} />
          </WhenFetched>
        ) : (
          whenEmpty
        )
      }
      after={
        isBoth && (
          <WhenFetched>
            <HeightBeside height={height} />
          </WhenFetched>
        )
      }
      isRequired
      mayBeEmptied={isMeasured}
      read={(document) => writtenHeight(document, height)}
      write={(document, entry) => withWrittenHeight(document, height, entry)}
    />
  );
}

/** Stands under the boxes of its line, so that none is further from the next by keyboard. */
export function HeightMeasuring({ height }: { readonly height: HeightName }) {
  const { place } = useNotebook();
  const siteId = useStore(place, ({ id }) => id);
  const isMeasured = useStore(place, ({ document }) => hasReadings(document, height));
  return (
    <MeasureFold
      key={siteId}
      summary={isMeasured ? `Readings of the ${height}` : `Measure the ${height}`}
    >
      <HeightPanel height={height} />
    </MeasureFold>
  );
}
