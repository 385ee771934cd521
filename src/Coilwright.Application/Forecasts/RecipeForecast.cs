using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Workshop.Entry;

namespace Coilwright.Application.Forecasts;

/// <summary>What is said of a recipe document: its forecast, or every mistake in it and in its load.</summary>
public sealed record RecipeForecast
{
    /// <summary>Every mistake in the recipe or the load; then there is no prediction.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>The pickup as physics sees it.</summary>
    public PickupModel? Model { get; init; }

    /// <summary>The forecast.</summary>
    public Prediction? Prediction { get; init; }

    /// <summary>Name of the field engine: "fast" or "accurate".</summary>
    public string Engine { get; init; } = "";
}
