import { plotFit } from "./plot-fit";

/**
 * Runs on the report page: draws the figures one after another, so that the page stays quick, and again when the width or
 * the page's darkness changes, and to the width of the paper, on white, before it prints, smaller where it is higher than a page. A figure that plotly cannot draw
 * shows its still picture, or why not, and the next one is drawn. `data-figures` on the body counts what is done.
 */
export const REPORT_SCRIPT: string = `
(function () {
  ${plotFit.toString()}
  var options = { responsive: false, displaylogo: false };
  var dark = window.matchMedia('(prefers-color-scheme: dark)');
  var sources = Array.prototype.slice.call(document.querySelectorAll('script[data-for]'));
  var figures = sources.slice();
  var drawn = 0;
  function draw(source) {
    var canvas = document.getElementById(source.dataset.for);
    return new Promise(function (done) { done(plot(canvas, source, canvas.clientWidth, dark.matches)); }).catch(function (error) {
      var still = source.parentElement.querySelector('noscript');
      if (still) canvas.innerHTML = still.textContent;
      else canvas.textContent = 'This figure could not be drawn: ' + error.message;
      canvas.style.height = 'auto';
    }).then(function () {
      document.body.dataset.figures = String(++drawn);
    });
  }
  var PAGE = 900;
  function plot(canvas, source, width, isDark, isPrinted) {
    var figure = JSON.parse(source.textContent);
    var fit = plotFit(figure, { widthPx: width, isDark: isDark });
    var share = isPrinted ? Math.min(1, PAGE / fit.heightPx) : 1;
    if (share < 1) fit = plotFit(figure, { widthPx: width / share, isDark: isDark });
    canvas.style.height = fit.heightPx + 'px';
    canvas.style.width = share < 1 ? width / share + 'px' : '';
    canvas.style.zoom = share < 1 ? share : '';
    canvas.dataset.at = width + ' ' + isDark;
    return Plotly.react(canvas, fit.data, Object.assign(fit.layout, { width: width / share }), options);
  }
  function next() {
    var source = figures.shift();
    if (!source) return;
    draw(source).then(function () { setTimeout(next, 0); });
  }
  document.body.dataset.figures = '0';
  next();
  function again(width, isDark, isPrinted) {
    sources.forEach(function (source) {
      var canvas = document.getElementById(source.dataset.for);
      var wide = width || canvas.clientWidth;
      if (canvas.classList.contains('js-plotly-plot') && canvas.dataset.at !== wide + ' ' + isDark) plot(canvas, source, wide, isDark, isPrinted);
    });
  }
  var waiting;
  function later() { clearTimeout(waiting); waiting = setTimeout(function () { again(0, dark.matches); }, 150); }
  window.addEventListener('resize', later);
  dark.addEventListener('change', later);
  window.addEventListener('beforeprint', function () { while (figures.length) draw(figures.shift()); again(640, false, true); });
  window.addEventListener('afterprint', function () { again(0, dark.matches); });
  if (location.hash) { var goal = document.getElementById(location.hash.slice(1)); if (goal) goal.scrollIntoView(); }
})();
`;
