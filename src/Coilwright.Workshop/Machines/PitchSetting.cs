using System.Globalization;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Machines;

/// <summary>The pitch a machine can run that comes nearest to the one wanted.</summary>
/// <param name="PitchM">Travel per spindle turn, m.</param>
/// <param name="OffBy">Pitch over the wanted one, less one.</param>
/// <param name="How">What to set, in words.</param>
/// <param name="Note">What to know about it; empty as a rule.</param>
public sealed record PitchSetting(double PitchM, double OffBy, string How, string Note = "")
{
    /// <summary>Beyond this part of the wanted pitch the sheet says so. Our assumption.</summary>
    private const double WorthTelling = 0.05;

    /// <summary>Finds the setting of a machine.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="wantedM">Pitch wanted, m.</param>
    /// <param name="windingHeightM">Space between the flanges, m.</param>
    /// <param name="speedRpm">Spindle speed for hand guiding; null when not known.</param>
    public static PitchSetting For(Machine machine, double wantedM, double windingHeightM, double? speedRpm) =>
        machine.Traverse switch
        {
            Traverse.Gears gears => OfGears(gears, wantedM),
            Traverse.Steps steps => OfSteps(steps, wantedM),
            Traverse.Cams cams => OfCam(cams, wantedM, windingHeightM),
            _ => ByHand(wantedM, windingHeightM, speedRpm),
        };

    private static PitchSetting OfGears(Traverse.Gears gears, double wantedM)
    {
        GearTrain train = GearTrain
            .All(gears.Wheels, gears.Stages)
            .MinBy(one => (Math.Abs(one.Ratio * gears.ScrewLeadM - wantedM), one.Driver2 is null ? 0 : 1))
            ?? throw new InvalidOperationException("A set of change wheels has at least two.");
        return Of(train.Ratio * gears.ScrewLeadM, wantedM, train.Words);
    }

    private static PitchSetting OfSteps(Traverse.Steps steps, double wantedM)
    {
        double count = Math.Max(1, Math.Round(wantedM / steps.TravelPerStepM, MidpointRounding.AwayFromZero));
        return Of(count * steps.TravelPerStepM, wantedM, string.Create(CultureInfo.InvariantCulture, $"{count:0} steps per turn"));
    }

    private static PitchSetting OfCam(Traverse.Cams cams, double wantedM, double windingHeightM)
    {
        GuideCam cam = cams
            .All.OrderBy(one => Math.Abs(one.StrokeM / windingHeightM - 1) > WorthTelling)
            .ThenBy(one => Math.Abs(one.PitchM - wantedM))
            .First();
        PitchSetting setting = Of(
            cam.PitchM,
            wantedM,
            string.Create(CultureInfo.InvariantCulture, $"cam {cam.Name}: {cam.TurnsPerStroke:0.##} turns a stroke of {Mm(cam.StrokeM)}")
        );
        List<string> notes = [.. setting.Note.Length > 0 ? [setting.Note] : Array.Empty<string>()];
        if (Math.Abs(cam.StrokeM / windingHeightM - 1) > WorthTelling)
        {
            notes.Add(
                $"its stroke is {Mm(cam.StrokeM)} and the window {Mm(windingHeightM)}: "
                    + $"{(cam.StrokeM > windingHeightM ? "it runs onto the flanges" : "the ends stay empty")}"
            );
        }

        if (cam.Harmonic)
        {
            notes.Add("an eccentric slows at the ends: wire piles up at the flanges, and the pitch in the middle is π/2 of the mean");
        }

        return setting with
        {
            Note = string.Join("; ", notes),
        };
    }

    private static PitchSetting ByHand(double wantedM, double windingHeightM, double? speedRpm)
    {
        double turns = windingHeightM / wantedM;
        string seconds = speedRpm is { } rpm and > 0 ? string.Create(CultureInfo.InvariantCulture, $", {turns / rpm * 60:0.0} s") : "";
        return new PitchSetting(
            wantedM,
            0,
            string.Create(CultureInfo.InvariantCulture, $"by hand: one pass over the window in {turns:0} turns{seconds}")
        );
    }

    private static PitchSetting Of(double pitchM, double wantedM, string how)
    {
        double offBy = pitchM / wantedM - 1;
        string side = offBy > 0 ? "coarser" : "finer",
            percent = (Math.Abs(offBy) * 100).ToString("0", CultureInfo.InvariantCulture);
        string note = Math.Abs(offBy) > WorthTelling ? $"the nearest this machine can do is {percent} % {side} than the recipe" : "";
        return new PitchSetting(pitchM, offBy, how, note);
    }

    private static string Mm(double lengthM) => QuantityParser.FormatIn(lengthM, QuantityKind.Length, "mm");
}
