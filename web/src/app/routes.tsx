/** Which screen stands at which address. The server gives out the same page for each of them. */
import { Redirect, Route, Switch } from 'wouter';
import { PlaceScreen } from '../screens/place-screen.tsx';
import { WorkshopScreen } from '../workshop/workshop-screen.tsx';

export function Routes() {
  return (
    <Switch>
      <Route path="/">
        <WorkshopScreen />
      </Route>
      <Route path="/places/:id/:view?">
        {({ id, view }) => <PlaceScreen id={id ?? ''} view={view ?? ''} />}
      </Route>
      <Route>
        <Redirect to="/" replace />
      </Route>
    </Switch>
  );
}
