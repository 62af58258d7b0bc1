// Begins the core's worker, see corePieces() in vite.config.ts. What it says before the page listens is kept.
// A module worker from a Blob does not load from file:// in Chromium; a classic one does.
(function () {
  if (typeof WebAssembly === 'undefined' || typeof DecompressionStream === 'undefined') return;
  var worker = new Worker(URL.createObjectURL(new Blob([document.getElementById('core-worker').textContent])));
  worker.early = [];
  worker.onmessage = function (event) { worker.early.push(event.data); };
  worker.onerror = function () { worker.early.push(null); };
  worker.begun = new Promise(function (done) { worker.addEventListener('message', function () { done(); }, { once: true }); });
  window.earlyWorker = worker;
})();
