import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';

/** Where the browser offers nothing, nothing stands here. */
export function InstallButton() {
  const { install } = useNotebook();
  const isOffered = useStore(install.isOffered, (offered) => offered);
  if (!isOffered) return null;
  return (
    <button type="button" className="button plain" onClick={() => void install.ask()}>
      Install Fallwright on this device
    </button>
  );
}
