/**
 * Calls back once when the process that started this one is gone.
 *
 * npm runs a script through a shell, and when npm is ended by its process id only that shell ends with
 * it. Without this, what the script has started would run on with nobody to stop it.
 *
 * @param {() => void} callback
 */
export function whenOrphaned(callback) {
  const parent = process.ppid;
  const timer = setInterval(() => {
    if (process.ppid === parent) return;
    clearInterval(timer);
    callback();
  }, 500);
  timer.unref();
}
