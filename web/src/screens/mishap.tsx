/** What stands on the page when drawing it failed: what broke, and that nothing typed is lost. */
import { Component } from 'react';

interface Props {
  readonly children: React.ReactNode;
}

interface State {
  readonly broke?: string;
}

export class Mishap extends Component<Props, State> {
  override state: State = {};

  static getDerivedStateFromError(error: unknown): State {
    return { broke: error instanceof Error ? error.message : String(error) };
  }

  override render() {
    const { broke } = this.state;
    if (broke === undefined) return this.props.children;
    return (
      <main className="page">
        <div className="slip danger" role="alert" style={{ marginTop: 'var(--s6)' }}>
          <p>
            <strong>This page could not be drawn: {broke}.</strong> What was typed is kept in this
            browser.
          </p>
          <button type="button" className="button" onClick={() => window.location.reload()}>
            Load it again
          </button>
        </div>
      </main>
    );
  }
}
