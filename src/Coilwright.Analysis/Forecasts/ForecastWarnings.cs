using System.Globalization;
using Coilwright.Physics;
using Coilwright.Physics.Winding;

namespace Coilwright.Analysis.Forecasts;

/// <summary>What a winder should know before the first turn.</summary>
internal static class ForecastWarnings
{
    public static IReadOnlyList<ForecastWarning> Find(PickupModel model, ForecastScene scene)
    {
        List<ForecastWarning> warnings = [];
        for (int c = 0; c < model.Coils.Count; c++)
        {
            CoilModel coil = model.Coils[c];
            WoundCoil wound = scene.Wound[c];
            if (coil.Bobbin.MaxBuildM is { } roomM && wound.BuildM > roomM)
            {
                warnings.Add(
                    new(
                        Path(c, "winding.turns"),
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"does not fit: the winding will be {wound.BuildM * 1e3:F2} mm thick, the bobbin has "
                                + $"room for {roomM * 1e3:F2} mm"
                        ),
                        MeansItDoesNotFit: true
                    )
                );
            }
            else if (wound.Fill is { } fill && fill > coil.Bobbin.FillLimit)
            {
                warnings.Add(
                    new(
                        Path(c, "winding.turns"),
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"fill {fill:F2} is over your own limit of {coil.Bobbin.FillLimit:F2} for this bobbin; "
                                + $"{coil.Winding.Turns * coil.Bobbin.FillLimit / fill:F0} turns reach it"
                        )
                    )
                );
            }

            if (coil.Winding.PitchM is { } pitchM && pitchM < coil.Wire.OverallDiameterM.Value)
            {
                warnings.Add(
                    new(
                        Path(c, "winding.pitch"),
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"the pitch of {pitchM * 1e3:F3} mm is less than the wire's overall diameter of "
                                + $"{coil.Wire.OverallDiameterM.Value * 1e3:F3} mm: turns will climb"
                        )
                    )
                );
            }
        }

        warnings.AddRange(Sizes.MeetingParts.Find(model));
        warnings.AddRange(scene.Field.Notes.Select(note => new ForecastWarning(note.Field, note.Message)));
        return warnings;
    }

    /// <summary>Peaks that are there at the middle of all intervals and missing at some end of one.</summary>
    public static IEnumerable<ForecastWarning> OfPeaks(bool unloaded, bool loaded)
    {
        if (unloaded || loaded)
        {
            string which = (unloaded, loaded) switch
            {
                (true, true) => "both peaks are",
                (true, false) => "the unloaded peak is",
                _ => "the peak on the load is",
            };
            yield return new(
                "coils",
                $"{which} so low that a coil made like this may show none; the interval of the frequency holds only where there is one"
            );
        }
    }

    private static string Path(int coil, string field) => string.Create(CultureInfo.InvariantCulture, $"coils[{coil}].{field}");
}
