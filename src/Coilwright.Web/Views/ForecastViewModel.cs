using Coilwright.Analysis.Forecasts;
using Coilwright.Formats.Responses;
using Coilwright.Web.Views.Recipes;
using Coilwright.Workshop.Entry;

namespace Coilwright.Web.Views;

/// <summary>What the page of a recipe shows of the recipe as it stands in the form: the five answers and the view in sight.</summary>
public sealed record ForecastViewModel
{
    /// <summary>Every mistake in the recipe or the load; then there is no prediction.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];
    public Prediction? Prediction { get; init; }

    /// <summary>Name of the field engine: "fast" or "accurate".</summary>
    public string Engine { get; init; } = "";

    /// <summary>The view in sight.</summary>
    public RecipeView Shown { get; init; } = RecipeView.Sound;

    /// <summary>The five answers.</summary>
    public IReadOnlyList<RecipeAnswer> Answers { get; init; } = [];

    /// <summary>Letter of the revision that the answers' changes are told against; empty when nothing has changed.</summary>
    public string Against { get; init; } = "";

    /// <summary>The pickup from above and in section.</summary>
    public string Drawing { get; init; } = "";
    public ResponseViewModel? Response { get; init; }

    /// <summary>Plots of the view in sight, each with its table.</summary>
    public IReadOnlyList<DrawingViewModel> Plots { get; init; } = [];
}

/// <summary>One drawing, and the same as a table where there is one.</summary>
public sealed record DrawingViewModel(string Caption, string Svg)
{
    /// <summary>What it shows, where it stands folded among others.</summary>
    public string Title { get; init; } = "";

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
    /// <summary>The figure of a recipe's own page; empty where the pages draw the curves themselves.</summary>
    public string Svg { get; init; } = "";

    /// <summary>The revision whose response stands behind it; empty for none.</summary>
    public string BeforeName { get; init; } = "";

    /// <summary>Its peak.</summary>
    public ResonanceForecast? BeforePeak { get; init; }

    /// <summary>The curves as a table, a column each, units in the header.</summary>
    public string Csv() => ResponseCsv.Write(FrequencyHz, [.. Curves.Select(curve => (curve.Name, curve.GainDb))]);
}

/// <summary>One curve of a response figure; the second of two is dashed, so that no colour is needed to tell them apart.</summary>
public sealed record CurveViewModel(string Name, IReadOnlyList<double?> GainDb, bool Dashed)
{
    /// <summary>Number of the curve's stroke, 0…5: solid, dashed, dotted and so on; null for the two of a recipe page.</summary>
    public int? Stroke { get; init; }
}
