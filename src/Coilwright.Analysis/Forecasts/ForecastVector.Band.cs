using Coilwright.Analysis.Uncertainty;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;

namespace Coilwright.Analysis.Forecasts;

/// <summary>The band that the response scatters in.</summary>
internal sealed partial class ForecastVector
{
    /// <summary>Ten draws lie beyond each edge, which is then sure to about 7 % of its distance from the middle.</summary>
    private const int BandDraws = 400,
        BandSeed = 1;

    /// <summary>
    /// The 95 % band of the response on the load, or bare without one, by seeded draws of the same inputs that every interval comes from;
    /// null for a silent one.
    /// </summary>
    /// <remarks>
    /// Drawn and not carried to first order: at a fixed frequency beside a peak the gain is no straight line of what moves the peak. No
    /// draw looks for its peak, which is most of the work of an evaluation.
    /// </remarks>
    public ResponseBand? Band(int points)
    {
        LoadCircuit load = _load ?? LoadCircuit.None;
        double[] frequencies = PickupResponse.LogFrequencies(20, 20_000, points),
            y = new double[Count];
        bool silent = false,
            search = SearchPeaks;
        SearchPeaks = false;
        Estimate[] gains = Propagation.Sample(
            _inputs.All,
            (x, drawn) =>
            {
                Evaluate(x, y);
                Response response = PickupResponse.Compute(BranchOf(y), y[PlaceOf(PickupResult.Capacitance)], null, load, frequencies);
                silent |= response.IsSilent;
                for (int i = 0; i < drawn.Length; i++)
                {
                    drawn[i] = response.Points[i].GainDb;
                }
            },
            points,
            BandDraws,
            BandSeed
        );
        SearchPeaks = search;
        return silent
            ? null
            : new ResponseBand(_load is not null, frequencies, [.. gains.Select(gain => gain.Low)], [.. gains.Select(gain => gain.High)]);
    }
}
