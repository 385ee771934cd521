using System.Globalization;
using Coilwright.Analysis.Curves;
using Coilwright.Physics.Circuit;

namespace Coilwright.Analysis.Tests.Curves;

/// <summary>One of the 39 pickups of tests/Reference/measured/three-loads.csv [MeasuredResponses].</summary>
internal sealed record MeasuredPickup(string Id, MeasuredCurve Bare, MeasuredCurve Loaded, MeasuredCurve Capacitor)
{
    public const string Source = "39 responses published by the user strayr, three loads each, CC0 [MeasuredResponses]";

    /// <summary>What hung on it for the second and the third curve.</summary>
    public static readonly LoadCircuit LoadedWith = new() { InputResistanceOhm = 200e3, InputCapacitanceF = 470e-12 },
        CapacitorOf = new() { InputCapacitanceF = 10e-9 };

    public static IReadOnlyList<MeasuredPickup> Read() =>
        [
            .. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Reference", "measured", "three-loads.csv"))
                .Where(line => line.StartsWith('m'))
                .Select(line => line.Split(','))
                .GroupBy(cells => cells[0])
                .Select(rows => Of(rows.Key, [.. rows.Select(cells => cells[1..].Select(Number).ToArray())])),
        ];

    private static MeasuredPickup Of(string id, double[][] rows)
    {
        MeasuredCurve Curve(int at) =>
            new([.. rows.Select(row => row[0])])
            {
                GainDb = [.. rows.Select(row => row[at])],
                PhaseDegrees = [.. rows.Select(row => row[at + 1])],
            };
        return new MeasuredPickup(id, Curve(1), Curve(3), Curve(5));
    }

    private static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);
}
