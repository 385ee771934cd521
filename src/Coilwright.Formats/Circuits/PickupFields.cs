using Coilwright.Physics.Circuit;
using Coilwright.Physics.Circuit.Networks;
using Coilwright.Workshop.Recipes.Circuits;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Formats.Circuits;

/// <summary>One pickup of a circuit: its coils, how they couple and join, and controls of its own.</summary>
public static class PickupFields
{
    private const int MostCoils = 8;
    private static readonly string[] s_connections = ["series", "parallel", "single"],
        s_leads = ["usual", "exchanged"];

    public static CircuitPickup Read(JsonFields fields)
    {
        string name = fields.Text("name");
        IReadOnlyList<CircuitCoil?> read = fields.Objects(
            "coils",
            Coil,
            MostCoils,
            "[ { \"resistance\": \"6.2 kΩ\", \"inductance\": \"2.5 H\", \"capacitance\": \"120 pF\" } ]"
        );
        if (read.Count == 0 && fields.Has("coils"))
        {
            fields.Problems.Add(fields.PathOf("coils"), "at least one coil is needed");
        }

        CircuitCoil[] coils =
        [
            .. read.Select(
                (coil, i) => coil ?? new CircuitCoil(new LumpedPickup(1, 0, 0), 0) { Name = FormattableString.Invariant($"coil {i + 1}") }
            ),
        ];
        coils =
        [
            .. coils.Select((coil, i) => coil.Name.Length > 0 ? coil : coil with { Name = FormattableString.Invariant($"coil {i + 1}") }),
        ];
        string? connection = fields.Word("connection", s_connections);
        return new CircuitPickup(coils)
        {
            Name = name,
            Mutual = MutualFields.Read(fields, coils, complete: read.All(coil => coil is not null)),
            Joined = connection == "parallel" ? Joining.Parallel : Joining.Series,
            OnlyCoil = Only(fields, connection, coils),
            Reversed = fields.Word("leads", s_leads) == "exchanged",
            Volume = fields.Object("volume", ControlFields.Volume)?.Value,
            Tone = fields.Object("tone", ControlFields.Tone)?.Value,
        };
    }

    private static CircuitCoil Coil(JsonFields fields)
    {
        string name = fields.Text("name");
        LumpedPickup lumped = LumpedReader.Parts(fields);
        return new CircuitCoil(lumped with { CapacitanceF = 0, ParallelLossOhm = null }, lumped.CapacitanceF)
        {
            Name = name,
            ParallelLossOhm = lumped.ParallelLossOhm,
            Level = fields.Number("level", -100, 100) ?? 1,
            Reversed = fields.Word("leads", s_leads) == "exchanged",
            TapShare = fields.Number("tap", 0.01, 1),
        };
    }

    private static int? Only(JsonFields fields, string? connection, CircuitCoil[] coils)
    {
        if (connection != "single")
        {
            fields.Refuse("coil", "only the connection \"single\" names a coil");
            return null;
        }

        string name = fields.Text("coil");
        int number = name.Length == 0 ? 0 : Array.FindIndex(coils, coil => coil.Name == name);
        if (number < 0)
        {
            fields.Problems.Add(
                fields.PathOf("coil"),
                "no coil of this pickup has this name",
                name,
                string.Join(", ", coils.Select(coil => coil.Name))
            );
            return null;
        }

        return number;
    }
}
