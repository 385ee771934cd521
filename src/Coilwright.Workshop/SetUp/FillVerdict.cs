using System.Globalization;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics.Winding;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.SetUp;

/// <summary>Whether the winding fits between core and cover.</summary>
/// <param name="Fill">Section of the wire over the section of the window, null when the window is not stated.</param>
/// <param name="Build">Forecast thickness of the winding, m.</param>
/// <param name="MaxBuildM">Radial room, m; null when the recipe does not state it.</param>
/// <param name="Fits">False when the forecast build is larger than the room, or the fill over the shop's own limit for the bobbin.</param>
/// <param name="Words">The verdict in words.</param>
public sealed record FillVerdict(Figure? Fill, Figure Build, double? MaxBuildM, bool Fits, string Words)
{
    internal static FillVerdict For(CoilForecast forecast, Bobbin bobbin)
    {
        if (bobbin.MaxBuildM is not { } roomM)
        {
            return new FillVerdict(
                forecast.Fill,
                forecast.Build,
                null,
                true,
                "the recipe states no room for the winding: measure it before the first coil"
            );
        }

        double spareM = roomM - forecast.Build.Value;
        string spare = QuantityParser.FormatIn(Math.Abs(spareM), QuantityKind.Length, "mm", 2);
        bool overLimit = forecast.Fill is { } fill && fill.Value > bobbin.FillLimit;
        bool mayTouch = forecast.Build.Estimate.High > roomM;
        string words = (Fits: spareM >= 0, overLimit, mayTouch) switch
        {
            (Fits: false, _, _) => $"does not fit: {spare} too thick",
            (_, overLimit: true, _) => string.Create(
                CultureInfo.InvariantCulture,
                $"{spare} to spare on paper, but fill {forecast.Fill!.Value:F2} is over your own limit of "
                    + $"{bobbin.FillLimit:F2} for this bobbin"
            ),
            (_, _, mayTouch: true) => $"fits with {spare} to spare, but may touch within its interval: watch the last layers",
            _ => $"fits, {spare} to spare",
        };
        return new FillVerdict(forecast.Fill, forecast.Build, roomM, spareM >= 0 && !overLimit, words);
    }
}
