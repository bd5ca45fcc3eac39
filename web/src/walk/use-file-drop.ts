import { useEffect, useState } from 'react';

/** What an element needs so that a file can be dropped on it. */
export function useFileDrop(take: (file: File) => void) {
  const [isOver, setOver] = useState(false);
  useEffect(() => {
    // A file that misses would otherwise be opened in place of the page.
    const keepPage = (event: DragEvent): void => {
      if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
    };
    window.addEventListener('dragover', keepPage);
    window.addEventListener('drop', keepPage);
    return () => {
      window.removeEventListener('dragover', keepPage);
      window.removeEventListener('drop', keepPage);
    };
  }, []);
  return {
    isOver,
    onDragOver: (event: React.DragEvent): void => {
      if (event.dataTransfer.types.includes('Files')) setOver(true);
    },
    onDragLeave: (event: React.DragEvent): void => {
      const { relatedTarget, currentTarget } = event;
      if (relatedTarget instanceof Node && currentTarget.contains(relatedTarget)) return;
      setOver(false);
    },
    onDrop: (event: React.DragEvent): void => {
      const [file] = event.dataTransfer.files;
      setOver(false);
      if (file !== undefined) take(file);
    },
  };
}
