/** Which screen stands at which address. The server gives out the same page for each of them. */
import { lazy, Suspense, useEffect } from 'react';
import { Redirect, Route, Switch } from 'wouter';
import { WorkshopScreen } from '../workshop/workshop-screen.tsx';
import { useNotebook } from './notebook.ts';

/** The list needs none of it; it is fetched as soon as the list stands, so that opening a place waits for nothing. */
export const placeLeaves = () => import('../screens/place-screen.tsx');
const PlaceScreen = lazy(() => placeLeaves().then((leaf) => ({ default: leaf.PlaceScreen })));

const RangeScreen = lazy(() =>
  import('../range/range-screen.tsx').then((leaf) => ({ default: leaf.RangeScreen })),
);

const PricesScreen = lazy(() =>
  import('../prices/prices-screen.tsx').then((leaf) => ({ default: leaf.PricesScreen })),
);

const BenchScreen = lazy(() =>
  import('../bench/bench-screen.tsx').then((leaf) => ({ default: leaf.BenchScreen })),
);

export function Routes() {
  useEffect(() => {
    // Without a network it comes from what the browser keeps, or else when a place is opened, where a fault is told.
    placeLeaves().catch(() => {});
  }, []);
  return (
    <Switch>
      <Route path="/">
        <WorkshopScreen />
      </Route>
      <Route path="/places/:id/:view?">
        {({ id, view }) => (
          <OpenPlace id={id ?? ''}>
            <PlaceScreen id={id ?? ''} view={view ?? ''} />
          </OpenPlace>
        )}
      </Route>
      <Route path="/range/:id?">
        {({ id }) => (
          <Suspense fallback={<h1 className="for-ears">Opening the range</h1>}>
            <RangeScreen id={id ?? ''} />
          </Suspense>
        )}
      </Route>
      <Route path="/prices">
        <Suspense fallback={<h1 className="for-ears">Opening the price list</h1>}>
          <PricesScreen />
        </Suspense>
      </Route>
      <Route path="/bench/:id?">
        {({ id }) => (
          <Suspense fallback={<h1 className="for-ears">Opening the bench</h1>}>
            <BenchScreen id={id ?? ''} />
          </Suspense>
        )}
      </Route>
      <Route>
        <Redirect to="/" replace />
      </Route>
    </Switch>
  );
}

/** The place is opened here and not on its leaf, so that its answer is worked out while the leaf is still on its way. */
function OpenPlace({ id, children }: { readonly id: string; readonly children: React.ReactNode }) {
  const { keeper, workshop } = useNotebook();
  useEffect(() => {
    void keeper.open(id);
    // The list shows what was written here.
    return () => void keeper.close().then(workshop.refresh);
  }, [keeper, workshop, id]);
  return <Suspense fallback={<h1 className="for-ears">Opening the place</h1>}>{children}</Suspense>;
}
