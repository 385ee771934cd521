using Coilwright.Analysis.Curves;
using Coilwright.Application.Curves;
using Coilwright.Formats.Curves;
using Coilwright.Physics.Circuit;

namespace Coilwright.Application.Measuring;

/// <summary>A fit beside what it was fitted to.</summary>
/// <param name="Answer">The fit.</param>
/// <param name="IsGain">True for dB of a gain, false for Ω of an impedance's magnitude.</param>
/// <param name="Read">Frequency and what was read there.</param>
/// <param name="Fitted">Frequency and what the fit says there, with points enough to be smooth at the peak.</param>
public sealed record FittedCurve(
    FitAnswer Answer,
    bool IsGain,
    IReadOnlyList<(double Hz, double Value)> Read,
    IReadOnlyList<(double Hz, double Value)> Fitted
)
{
    private const int Smooth = 600;

    /// <summary>An impedance with its fit.</summary>
    public static FittedCurve OfImpedance(FitAnswer answer) => OfImpedance(answer, answer.Table.Curve);

    /// <summary>Of several curves the impedance that the ratio of the first two gives; of one what it holds.</summary>
    internal static FittedCurve Of(FitAnswer answer, IReadOnlyList<LoadedCurve> curves)
    {
        MeasuredCurve first = curves[0].Table.Curve;
        if (curves.Count == 1)
        {
            return first.ImpedanceOhm is null ? OfGain(answer, curves[0]) : OfImpedance(answer);
        }

        return OfImpedance(answer, CurveRatio.Of(first, curves[0].Load, curves[1].Table.Curve, curves[1].Load).Impedance());
    }

    private static FittedCurve OfImpedance(FitAnswer answer, MeasuredCurve curve) =>
        new(
            answer,
            false,
            [.. curve.FrequenciesHz.Zip(curve.ImpedanceOhm!, (hz, ohm) => (hz, ohm.Magnitude))],
            [.. Grid(curve).Select(hz => (hz, PickupImpedance.Ohm(answer.Fit.Pickup, hz).Magnitude))]
        );

    /// <summary>A gain has no level of its own: the fit is moved to the mean of what was read.</summary>
    private static FittedCurve OfGain(FitAnswer answer, LoadedCurve curve)
    {
        MeasuredCurve read = curve.Table.Curve;
        double level = read.GainDb!.Average() - Gains(answer, curve, read.FrequenciesHz).Average();
        double[] grid = Grid(read);
        return new FittedCurve(
            answer,
            true,
            [.. read.FrequenciesHz.Zip(read.GainDb!)],
            [.. grid.Zip(Gains(answer, curve, grid), (hz, db) => (hz, db + level))]
        );
    }

    private static double[] Gains(FitAnswer answer, LoadedCurve curve, double[] hz) =>
        [.. PickupResponse.Compute(answer.Fit.Pickup, curve.Load, hz).Points.Select(point => point.GainDb)];

    private static double[] Grid(MeasuredCurve curve) =>
        PickupResponse.LogFrequencies(curve.FrequenciesHz[0], curve.FrequenciesHz[^1], Smooth);
}
