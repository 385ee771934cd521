using Coilwright.Physics;
using Coilwright.Physics.Circuit;

namespace Coilwright.Analysis.Forecasts;

/// <summary>
/// A recipe's pickup as its circuit sees it: the series branch by tables, its capacitance, and the forecast they come from.
/// </summary>
/// <param name="Branch">L(f) and R(f).</param>
/// <param name="CapacitanceF">Capacitance across it, F.</param>
/// <param name="Pickup">The forecast without a load.</param>
public sealed record ForecastBranch(TabulatedBranch Branch, double CapacitanceF, PickupForecast Pickup)
{
    /// <summary>Frequencies the branch is solved at; it is smooth between them.</summary>
    public static IReadOnlyList<double> FrequenciesHz { get; } =
    [20, 50, 120, 300, 600, 1_000, 1_500, 2_200, 3_300, 4_700, 6_800, 10_000, 14_000, 20_000];

    /// <summary>Forecasts a recipe: solves its field at all of <see cref="FrequenciesHz"/>.</summary>
    /// <param name="model">The pickup.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static ForecastBranch Forecast(PickupModel model, CancellationToken cancel = default)
    {
        IReadOnlyList<double> drawnFrom = ForecastScene.CurveFrequenciesOf(model);
        PickupForecast pickup = Forecaster
            .Predict(model, load: null, new ForecastOptions { FrequenciesHz = [.. FrequenciesHz.Union(drawnFrom).Order()] }, cancel)
            .Pickup;
        SpectrumForecast[] lines = [.. pickup.Spectrum.Where(line => drawnFrom.Contains(line.FrequencyHz))];
        TabulatedBranch branch = new(
            [.. lines.Select(line => line.FrequencyHz)],
            [.. lines.Select(line => line.Inductance.Value)],
            [.. lines.Select(line => line.Resistance.Value)]
        );
        return new ForecastBranch(branch, pickup.Capacitance.Value, pickup);
    }
}
