using System.Globalization;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.SetUp;

/// <summary>What can be done when the wire breaks, each with its consequence.</summary>
public static class BreakAdvice
{
    /// <summary>The choices for one coil, broken after a number of real turns.</summary>
    /// <param name="coil">Its set-up.</param>
    /// <param name="turnsDone">Real turns on the bobbin, 0…<see cref="CoilSetUp.Turns"/>.</param>
    /// <remarks>Inductance goes with the square of the turns: exact for the same section, a few per cent off for a thinner one.</remarks>
    public static IReadOnlyList<string> Choices(CoilSetUp coil, double turnsDone)
    {
        double share = Math.Clamp(turnsDone / coil.Turns, 0, 1);
        string grams = QuantityParser.Format(coil.WireMass.Value * share, QuantityKind.Mass, 2);
        string minutes = coil.RunTimeS is { } seconds
            ? string.Create(CultureInfo.InvariantCulture, $" and {seconds * share / 60:0.0} min")
            : "";
        return
        [
            $"Scrap: {grams} of wire{minutes} are lost.",
            "Splice: twist, solder, insulate; mark the coil as spliced so that its reading can be judged.",
            string.Create(
                CultureInfo.InvariantCulture,
                $"Stop here: inductance falls to {share * share * 100:0} %; keep it only for a different model."
            ),
        ];
    }
}
