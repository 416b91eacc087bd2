// Keeps the app on the device (sw.js) and offers a new version when there is one. Nothing is replaced unasked, and
// the plan is stored before the page is loaded again.

const CHECK_AGAIN_MS = 60 * 60 * 1000;

function offer(registration) {
  const bar = document.getElementById('update');
  bar.hidden = false;
  document.getElementById('update_now').onclick = () => {
    navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
    registration.waiting?.postMessage('take over');
  };
  document.getElementById('update_later').onclick = () => { bar.hidden = true; };
}

/** Calls back once when the worker has been fetched whole. */
function when_installed(worker, done) {
  if (worker.state === 'installed') done();
  else worker.addEventListener('statechange', () => worker.state === 'installed' && done());
}

/** Calls update() when the page comes back into sight, at most once in a while. */
function check_now_and_then(registration) {
  let checked = Date.now();
  document.addEventListener('visibilitychange', () => {
    if (document.hidden || Date.now() - checked < CHECK_AGAIN_MS) return;
    checked = Date.now();
    registration.update().catch(() => {});
  });
}

/** Where there is no service worker (an old browser, a page not over HTTPS) the app works all the same. */
export async function keep_offline() {
  if (!navigator.serviceWorker) return;
  try {
    const registration = await navigator.serviceWorker.register('sw.js', { updateViaCache: 'none' });
    const newer = (worker) => when_installed(worker, () => navigator.serviceWorker.controller && offer(registration));
    // The update may have been found before anyone could listen.
    for (const worker of [registration.waiting, registration.installing]) if (worker) newer(worker);
    registration.addEventListener('updatefound', () => newer(registration.installing));
    check_now_and_then(registration);
  } catch {
    // Forbidden here, or no network at the first visit: the next visit tries again.
  }
}
