// Draws the charts of a page: puts the colours of light or dark in the place of their roles, and draws again when the scheme changes.
// Without this script, or without the chart script, the still pictures stay.
(function () {
  "use strict";
  if (!window.Plotly) { return; }
  var style = document.getElementById("chart-style");
  if (!style) { return; }
  var kit = JSON.parse(style.textContent);
  var dark = window.matchMedia("(prefers-color-scheme: dark)");
  var alwaysLight = style.hasAttribute("data-light");

  function inRole(value, roles) {
    if (typeof value === "string") { return value.indexOf("role:") === 0 ? roles[value.slice(5)] : value; }
    if (Array.isArray(value)) { return value.map(function (item) { return inRole(item, roles); }); }
    if (value && typeof value === "object") {
      return Object.keys(value).reduce(function (copy, key) { copy[key] = inRole(value[key], roles); return copy; }, {});
    }
    return value;
  }

  // A chart in a closed passage, or on a phone that is turned, gets its width later.
  var widths = new ResizeObserver(function (entries) {
    entries.forEach(function (entry) { if (entry.contentRect.width > 0) { window.Plotly.Plots.resize(entry.target); } });
  });

  function draw(chart) {
    var source = chart.querySelector("script[type='application/json']"), live = chart.querySelector(".live");
    if (!source || !live) { return; }
    var roles = kit.roles[dark.matches && !alwaysLight ? "dark" : "light"];
    var figure = inRole(JSON.parse(source.textContent), roles);
    figure.layout.template = inRole(kit.template, roles);
    chart.classList.add("is-live");
    window.Plotly.react(live, figure.data, figure.layout, kit.config);
    widths.observe(live);
  }

  function drawAll(again) {
    document.querySelectorAll(again ? ".chart" : ".chart:not(.is-live)").forEach(draw);
    document.dispatchEvent(new Event("charts-drawn"));
  }

  drawAll(false);
  dark.addEventListener("change", function () { drawAll(true); });
  // In a notebook charts come one by one, as cells are run.
  if (alwaysLight) {
    new MutationObserver(function () {
      if (document.querySelector(".chart:not(.is-live)")) { drawAll(false); }
    }).observe(document.body, { childList: true, subtree: true });
  }
}());
