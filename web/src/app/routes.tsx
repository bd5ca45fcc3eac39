/** Which screen stands at which address. The server gives out the same page for each of them. */
import { lazy, Suspense, useEffect } from 'react';
import { Redirect, Route, Switch } from 'wouter';
import { WorkshopScreen } from '../workshop/workshop-screen.tsx';

/** The list needs none of it; it is fetched as soon as the list stands, so that opening a place waits for nothing. */
const placeLeaves = () => import('../screens/place-screen.tsx');
const PlaceScreen = lazy(() => placeLeaves().then((leaf) => ({ default: leaf.PlaceScreen })));

const RangeScreen = lazy(() =>
  import('../range/range-screen.tsx').then((leaf) => ({ default: leaf.RangeScreen })),
);

const PricesScreen = lazy(() =>
  import('../prices/prices-screen.tsx').then((leaf) => ({ default: leaf.PricesScreen })),
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
          <Suspense fallback={<h1 className="for-ears">Opening the place</h1>}>
            <PlaceScreen id={id ?? ''} view={view ?? ''} />
          </Suspense>
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
      <Route>
        <Redirect to="/" replace />
      </Route>
    </Switch>
  );
}
