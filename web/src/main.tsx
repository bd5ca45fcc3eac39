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
import { openNotebook } from './app/open-notebook.ts';
import { Routes } from './app/routes.tsx';
import { Mishap } from './screens/mishap.tsx';

const root = document.getElementById('root');
if (root === null) throw new Error('index.html has lost its root element');

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
