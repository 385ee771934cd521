using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Strings;

namespace Coilwright.Analysis.Listening;

/// <summary>What a recipe's pickup hears along each of its strings.</summary>
public static class ApertureForecast
{
    /// <summary>By ascending x; empty for a pickup without strings.</summary>
    /// <param name="model">The pickup.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static IReadOnlyList<StringAperture> Of(PickupModel model, CancellationToken cancel = default) =>
        new ForecastScene(model, new ForecastOptions(), cancel).Strings is { } strings
            ? [.. strings.Answers.Select(StringAperture.Of)]
            : [];
}
