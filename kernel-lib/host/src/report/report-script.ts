/**
 * Runs on the report page: draws the figures one after another, so that the page stays quick, and again to the width
 * of the paper before it prints. A figure that plotly cannot draw shows its still picture, or why not, and the next one is
 * drawn. `data-figures` on the body counts what is done.
 */
export const REPORT_SCRIPT = `
(function () {
  var options = { responsive: true, displaylogo: false };
  var figures = Array.prototype.slice.call(document.querySelectorAll('script[data-for]'));
  var drawn = 0;
  function draw(source) {
    var canvas = document.getElementById(source.dataset.for);
    return new Promise(function (done) { done(plot(canvas, JSON.parse(source.textContent))); }).catch(function (error) {
      var still = source.parentElement.querySelector('noscript');
      if (still) canvas.innerHTML = still.textContent;
      else canvas.textContent = 'This figure could not be drawn: ' + error.message;
      canvas.style.height = 'auto';
    }).then(function () {
      document.body.dataset.figures = String(++drawn);
    });
  }
  function plot(canvas, figure) {
    var layout = Object.assign({}, figure.layout, { autosize: true });
    delete layout.width;
    if (canvas.clientWidth < 480) {
      layout.margin = Object.assign({}, layout.margin, { l: 48, r: 12 });
      if (layout.title) layout.title = Object.assign({}, layout.title, { font: { size: 13 } });
    }
    return Plotly.newPlot(canvas, figure.data, layout, options);
  }
  function next() {
    var source = figures.shift();
    if (!source) return;
    draw(source).then(function () { setTimeout(next, 0); });
  }
  document.body.dataset.figures = '0';
  next();
  function resize(width) {
    document.querySelectorAll('.js-plotly-plot').forEach(function (plot) { Plotly.relayout(plot, width ? { width: width } : { autosize: true, width: undefined }); });
  }
  window.addEventListener('beforeprint', function () { while (figures.length) draw(figures.shift()); resize(640); });
  window.addEventListener('afterprint', function () { resize(0); });
  if (location.hash) { var goal = document.getElementById(location.hash.slice(1)); if (goal) goal.scrollIntoView(); }
})();
`;
