using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;

namespace Coilwright.Analysis.Tests.Forecasts;

/// <summary>The band of the response against the intervals of its own peak, which come another way: to first order, not drawn.</summary>
public sealed class ResponseBandTests
{
    private const int Points = 240;

    private static readonly LoadCircuit s_player = new() { CableCapacitanceF = 500e-12, InputResistanceOhm = 200e3 };

    public static TheoryData<string> Kinds => ["single", "twin"];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_band_at_the_peak_agrees_with_the_peaks_own_interval(string kind)
    {
        Prediction forecast = Predict(kind);
        ResponseBand band = forecast.Band!;
        ResonanceForecast peak = forecast.Pickup.LoadedResonance!;
        Assert.True(band.Loaded);

        // Height: no higher than the highest peak, and as low as its interval's half-width allows.
        Estimate gain = peak.Gain.Estimate;
        double half = (gain.High - gain.Low) / 2;
        Assert.InRange(band.HighDb.Max(), gain.Value, gain.High + 0.2 * half);

        // Place: on the way down behind the peak both edges lie as far apart as both ends of the peak's interval.
        Estimate place = peak.Frequency.Estimate;
        double apart = Math.Log(place.High / place.Low),
            found = Math.Log(Falls(band, band.HighDb, 0) / Falls(band, band.LowDb, 0));
        Assert.InRange(found / apart, 0.85, 1.15);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_curve_lies_within_its_band_and_the_band_closes_where_gains_are_told_from(string kind)
    {
        Prediction forecast = Predict(kind);
        ResponseBand band = forecast.Band!;
        ResponsePoint[] curve = [.. forecast.Curves.Single(one => one.Loaded).Response.Points];
        Assert.Equal(curve.Select(point => point.FrequencyHz), band.FrequencyHz);
        Assert.All(Enumerable.Range(0, Points), i => Assert.InRange(curve[i].GainDb, band.LowDb[i] - 1e-9, band.HighDb[i] + 1e-9));
        Assert.Equal(0, band.HighDb[0] - band.LowDb[0], 1e-9);
        Assert.True(band.HighDb[^1] - band.LowDb[^1] > 1);
    }

    [Fact]
    public void The_same_recipe_has_the_same_band_and_none_unless_asked_for()
    {
        Assert.Equal(Predict("single").Band!.HighDb, Predict("single").Band!.HighDb);
        Assert.Null(Forecaster.Predict(Pickups.Single(), s_player, cancel: TestContext.Current.CancellationToken).Band);
    }

    private static Prediction Predict(string kind) =>
        Forecaster.Predict(
            kind == "single" ? Pickups.Single() : Pickups.Twin(),
            s_player,
            new ForecastOptions { CurvePoints = Points, BandPoints = Points },
            TestContext.Current.CancellationToken
        );

    /// <summary>Frequency at which an edge falls through a gain behind its peak, Hz.</summary>
    private static double Falls(ResponseBand band, IReadOnlyList<double> edge, double gainDb)
    {
        int last = Enumerable.Range(0, edge.Count - 1).Last(i => edge[i] >= gainDb);
        double part = (edge[last] - gainDb) / (edge[last] - edge[last + 1]);
        return band.FrequencyHz[last] * Math.Pow(band.FrequencyHz[last + 1] / band.FrequencyHz[last], part);
    }
}
