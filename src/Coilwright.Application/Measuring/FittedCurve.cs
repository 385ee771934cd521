using Coilwright.Analysis.Curves;
using Coilwright.Application.Curves;
using Coilwright.Formats.Curves;
using Coilwright.Physics.Circuit;

namespace Coilwright.Application.Measuring;

/// <summary>A fit beside what it was fitted to, point by point.</summary>
/// <param name="Answer">The fit.</param>
/// <param name="IsGain">True for dB of a gain, false for Ω of an impedance's magnitude.</param>
/// <param name="Points">Frequency, what was read, and what the fit says there.</param>
public sealed record FittedCurve(FitAnswer Answer, bool IsGain, IReadOnlyList<(double Hz, double Read, double Fitted)> Points)
{
    /// <summary>An impedance with its fit.</summary>
    public static FittedCurve OfImpedance(FitAnswer answer) => new(answer, false, Impedances(answer.Fit.Pickup, answer.Table.Curve));

    /// <summary>Of several curves the impedance that the ratio of the first two gives; of one what it holds.</summary>
    internal static FittedCurve Of(FitAnswer answer, IReadOnlyList<LoadedCurve> curves)
    {
        MeasuredCurve first = curves[0].Table.Curve;
        if (curves.Count == 1)
        {
            return first.ImpedanceOhm is null ? new(answer, true, Gains(answer.Fit.Pickup, curves[0])) : OfImpedance(answer);
        }

        CurveRatio ratio = CurveRatio.Of(first, curves[0].Load, curves[1].Table.Curve, curves[1].Load);
        return new FittedCurve(answer, false, Impedances(answer.Fit.Pickup, ratio.Impedance()));
    }

    private static (double, double, double)[] Impedances(LumpedPickup pickup, MeasuredCurve curve) =>
        [.. curve.FrequenciesHz.Zip(curve.ImpedanceOhm!, (hz, ohm) => (hz, ohm.Magnitude, PickupImpedance.Ohm(pickup, hz).Magnitude))];

    /// <summary>A gain has no level of its own: the fit is moved to the mean of what was read.</summary>
    private static (double, double, double)[] Gains(LumpedPickup pickup, LoadedCurve curve)
    {
        MeasuredCurve read = curve.Table.Curve;
        double[] fitted = [.. PickupResponse.Compute(pickup, curve.Load, read.FrequenciesHz).Points.Select(point => point.GainDb)];
        double level = read.GainDb!.Average() - fitted.Average();
        return [.. read.FrequenciesHz.Select((hz, i) => (hz, read.GainDb![i], fitted[i] + level))];
    }
}
