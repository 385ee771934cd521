using Coilwright.Analysis.Forecasts;
using Coilwright.Formats.Responses;
using Coilwright.Workshop.Entry;

namespace Coilwright.Web.Views;

/// <summary>What the forecast panel shows for a recipe as it stands in the form.</summary>
public sealed record ForecastViewModel
{
    /// <summary>Every mistake in the recipe or the load; then there is no prediction.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];
    public Prediction? Prediction { get; init; }

    /// <summary>Name of the field engine: "fast" or "accurate".</summary>
    public string Engine { get; init; } = "";
    public ResponseViewModel? Response { get; init; }

    /// <summary>Plots of the strings' field and output and of the coil's branch, each with its table.</summary>
    public IReadOnlyList<DrawingViewModel> Plots { get; init; } = [];

    /// <summary>Drawings to scale, each with its caption; SVG made by us.</summary>
    public IReadOnlyList<DrawingViewModel> Drawings { get; init; } = [];
}

/// <summary>One drawing, and the same as a table where there is one.</summary>
public sealed record DrawingViewModel(string Caption, string Svg)
{
    /// <summary>Columns of the table; empty for none.</summary>
    public IReadOnlyList<string> Header { get; init; } = [];

    /// <summary>Rows of the table, the first cell names the row.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Rows { get; init; } = [];
}

/// <summary>The response of the pickup, unloaded and loaded.</summary>
/// <param name="FrequencyHz">Common frequencies.</param>
/// <param name="Curves">One or two curves.</param>
/// <param name="PeakHz">Peak of the loaded curve, or of the only one.</param>
public sealed record ResponseViewModel(IReadOnlyList<double> FrequencyHz, IReadOnlyList<CurveViewModel> Curves, double? PeakHz)
{
    /// <summary>The curves as a table, a column each, units in the header.</summary>
    public string Csv() => ResponseCsv.Write(FrequencyHz, [.. Curves.Select(curve => (curve.Name, curve.GainDb))]);
}

/// <summary>One curve of a response figure; the second of two is dashed, so that no colour is needed to tell them apart.</summary>
public sealed record CurveViewModel(string Name, IReadOnlyList<double?> GainDb, bool Dashed)
{
    /// <summary>Number of the curve's stroke, 0…5: solid, dashed, dotted and so on; null for the two of a recipe page.</summary>
    public int? Stroke { get; init; }
}
