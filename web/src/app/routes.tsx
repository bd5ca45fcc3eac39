/** Which screen stands at which address. The server gives out the same page for each of them. */
import { lazy, Suspense, useEffect } from 'react';
import { Redirect, Route, Switch } from 'wouter';
import { WorkshopScreen } from '../workshop/workshop-screen.tsx';
import { useNotebook } from './notebook.ts';

/** The list needs none of it; it is fetched as soon as the list stands, so that opening a place waits for nothing. */
export const placeLeaves = () => import('../screens/place-screen.tsx');
const PlaceScreen = lazy(() => placeLeaves().then((leaf) => ({ default: leaf.PlaceScreen })));

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
      <Route>
        <Redirect to="/" replace />
      </Route>
    </Switch>
  );
}

/** The place is opened here and not on its leaf, so that its answer is worked out while the leaf is still on its way. */
function OpenPlace({ id, children }: { readonly id: string; readonly children: React.ReactNode }) {
  const { keeper } = useNotebook();
  useEffect(() => {
    void keeper.open(id);
    return () => void keeper.close();
  }, [keeper, id]);
  return <Suspense fallback={<h1 className="for-ears">Opening the place</h1>}>{children}</Suspense>;
}
