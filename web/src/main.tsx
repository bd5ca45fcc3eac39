import '@fontsource-variable/besley/wght.css';
import '@fontsource-variable/besley/wght-italic.css';
import '@fontsource-variable/national-park/wght.css';
import './styles/tokens.css';
import './styles/page.css';
import './styles/drawing.css';
import './styles/answer.css';
import './styles/fields.css';
import './need/need.css';
import './profile/profile.css';
import './workshop/workshop.css';
import './offline/offline.css';
import './styles/print.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { NotebookContext } from './app/notebook.ts';
import { isPlaceAddress, openNotebook } from './app/open-notebook.ts';
import { placeLeaves, Routes } from './app/routes.tsx';
import { Mishap } from './screens/mishap.tsx';

const root = document.getElementById('root');
if (root === null) throw new Error('index.html has lost its root element');

// What a place is drawn with is fetched while the shelf opens; a fault is told when it is drawn.
if (isPlaceAddress(window.location.pathname)) placeLeaves().catch(() => {});
const notebook = await openNotebook();

createRoot(root).render(
  <StrictMode>
    <NotebookContext value={notebook}>
      <Mishap>
        <Routes />
      </Mishap>
    </NotebookContext>
  </StrictMode>,
);
