using System.Globalization;
using System.Text;
using Coilwright.Physics.Circuit.Networks;

namespace Coilwright.Physics.Circuit;

/// <summary>Writes pickup and load as a netlist in the open SPICE syntax, for people who want to go on in a circuit simulator.</summary>
/// <remarks>
/// Nodes: <c>src</c> the string's voltage (1 V), <c>pickup</c> the pickup's terminal, <c>out</c> the output; 0 is ground. Topology as in
/// <see cref="PickupResponse"/>.
/// </remarks>
public static class SpiceNetlist
{
    /// <summary>The whole file: parts, one AC sweep spaced evenly in log frequency, and the output's gain in dB and phase.</summary>
    /// <param name="pickup">The pickup.</param>
    /// <param name="load">What hangs on it.</param>
    /// <param name="fromHz">First frequency, Hz, 1 mHz…1 GHz.</param>
    /// <param name="toHz">Last frequency, Hz, above the first, at most 1 GHz.</param>
    /// <param name="points">
    /// Number of points wanted, 2…100,000,000; SPICE counts them per decade, so the file asks for the next whole number.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static string Write(LumpedPickup pickup, LoadCircuit load, double fromHz, double toHz, int points)
    {
        Require.InRange(fromHz, 1e-3, 1e9);
        Require.InRange(toHz, Math.BitIncrement(fromHz), 1e9);
        Require.InRange(points, 2, 1e8);
        int perDecade = Math.Max(1, (int)Math.Ceiling((points - 1) / Math.Log10(toHz / fromHz) - 1e-9));
        StringBuilder text = new();
        text.Append("* Pickup and load, SI units; the source is the voltage that the string induces\n");
        text.Append(Parts(pickup, load));
        text.Append(CultureInfo.InvariantCulture, $".ac dec {perDecade} {fromHz} {toHz}\n");
        text.Append(".print ac vdb(out) vp(out)\n.end\n");
        return text.ToString();
    }

    /// <summary>The parts alone, one a line.</summary>
    /// <param name="pickup">The pickup.</param>
    /// <param name="load">What hangs on it.</param>
    public static string Parts(LumpedPickup pickup, LoadCircuit load)
    {
        if (!load.IsPlain)
        {
            return CircuitNetlist.Parts(GuitarCircuit.FromCoil(pickup, pickup.CapacitanceF, pickup.ParallelLossOhm, load));
        }

        StringBuilder text = new();
        string terminal = load.Volume is null ? "out" : "pickup";
        text.Append("Vstring src 0 DC 0 AC 1\n");
        Coil(text, pickup, terminal);
        Part(text, "Ccoil", terminal, "0", pickup.CapacitanceF);
        Part(text, "Rloss", terminal, "0", pickup.ParallelLossOhm);
        if (load.Tone is { } tone)
        {
            double inSeries = tone.ResistanceOhm * tone.Setting;
            string node = inSeries > 0 ? "tone" : terminal;
            Part(text, "Rtone", terminal, "tone", inSeries);
            Part(text, "Ctone", node, "0", tone.CapacitorF);
        }

        if (load.Volume is { } volume)
        {
            double below = volume.ResistanceOhm * volume.Setting,
                above = volume.ResistanceOhm - below;
            text.Append(above > 0 ? "" : "Vwiper pickup out DC 0\n");
            Part(text, "Rabove", "pickup", "out", above);
            text.Append(below > 0 ? "" : "Vground out 0 DC 0\n");
            Part(text, "Rbelow", "out", "0", below);
        }

        Part(text, "Ccable", "out", "0", load.CableCapacitanceF);
        Part(text, "Rinput", "out", "0", load.InputResistanceOhm);
        Part(text, "Cinput", "out", "0", load.InputCapacitanceF);
        return text.ToString();
    }

    private static void Coil(StringBuilder text, LumpedPickup pickup, string terminal)
    {
        // A part of 0 H would short its nodes: it is left out together with its resistor, and the next part takes its place.
        List<(string Name, double Value, double? Across)> parts = [("Rcoil", pickup.ResistanceOhm, null)];
        if (pickup.InductanceH > 0)
        {
            parts.Add(("Lcoil", pickup.InductanceH, null));
        }

        for (int i = 0; i < pickup.Eddy.Count; i++)
        {
            if (pickup.Eddy[i] is { InductanceH: > 0, ResistanceOhm: > 0 } eddy)
            {
                parts.Add((FormattableString.Invariant($"Leddy{i + 1}"), eddy.InductanceH, eddy.ResistanceOhm));
            }
        }

        string from = "src";
        for (int i = 0; i < parts.Count; i++)
        {
            string to = i == parts.Count - 1 ? terminal : FormattableString.Invariant($"coil{i + 1}");
            Part(text, parts[i].Name, from, to, parts[i].Value);
            Part(text, parts[i].Name.Replace('L', 'R'), from, to, parts[i].Across);
            from = to;
        }
    }

    private static void Part(StringBuilder text, string name, string from, string to, double? value)
    {
        if (value > 0)
        {
            text.Append(CultureInfo.InvariantCulture, $"{name} {from} {to} {value.Value:R}\n");
        }
    }
}
