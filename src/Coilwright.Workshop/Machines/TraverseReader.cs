using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Workshop.Machines;

/// <summary>Reads what moves a machine's guide: change gears, steps, or cams.</summary>
internal sealed class TraverseReader(JsonFields fields, Limits travel, Limits lead)
{
    private const int MostWheels = 24;

    public Boxed Read()
    {
        if (fields.Has("cams"))
        {
            fields.Refuse("screwLead", "cams need no screw");
            fields.Refuse("travelPerStep", "cams make no steps");
            return new Boxed(Cams());
        }

        if (fields.Has("wheels"))
        {
            fields.Refuse("travelPerStep", "change wheels make no steps");
            return new Boxed(Gears());
        }

        fields.Free("cams", "wheels", "stages");
        return new Boxed(Steps());
    }

    private Traverse.Cams Cams()
    {
        IReadOnlyList<GuideCam> cams = fields.Objects(
            "cams",
            Cam,
            50,
            "[ { \"name\": \"A\", \"stroke\": \"11 mm\", \"turnsPerStroke\": 58 } ]"
        );
        if (cams.Count == 0)
        {
            fields.Problems.Add(fields.PathOf("cams"), "name at least one cam");
        }

        return new Traverse.Cams([.. cams.OfType<GuideCam>()]);
    }

    private static GuideCam Cam(JsonFields cam) =>
        new(
            cam.Text("name", "A"),
            0,
            cam.Number("turnsPerStroke", 1, 2000, required: true) ?? double.NaN,
            cam.Word("motion", ["even", "harmonic"]) == "harmonic"
        )
        {
            StrokeM = cam.Required("stroke", MachineReader.Stroke).Si,
        };

    private Traverse.Gears Gears()
    {
        int[] wheels =
        [
            .. fields.Items("wheels", (item, path) => Wheel(item, path), MostWheels).OfType<Teeth>().Select(wheel => wheel.Count),
        ];
        if (wheels.Length < 2)
        {
            fields.Problems.Add(
                fields.PathOf("wheels"),
                "two change wheels are the least",
                null,
                $"2 to {MostWheels} wheels of 8 to 300 teeth"
            );
        }

        double stages = fields.Number("stages", 1, 2, whole: true) ?? 1;
        return new Traverse.Gears(fields.Required("screwLead", lead).Si, wheels, double.IsFinite(stages) ? (int)stages : 1);
    }

    private Teeth? Wheel(System.Text.Json.JsonElement item, string path)
    {
        if (item.ValueKind == System.Text.Json.JsonValueKind.Number && item.TryGetInt32(out int teeth) && teeth is >= 8 and <= 300)
        {
            return new Teeth(teeth);
        }

        fields.Problems.Add(path, "a number of teeth is needed", JsonFields.Told(item), "8 to 300");
        return null;
    }

    private Traverse.Steps Steps()
    {
        if (fields.Has("travelPerStep"))
        {
            fields.Refuse("screwLead", "give either the travel of a step, or the screw's lead and the steps of a turn");
            fields.Refuse("stepsPerTurn", "give either the travel of a step, or the screw's lead and the steps of a turn");
            return new Traverse.Steps(fields.Required("travelPerStep", travel).Si);
        }

        double leadM = fields.Required("screwLead", lead).Si,
            steps = fields.Number("stepsPerTurn", 1, 1e6, required: true, whole: true) ?? double.NaN;
        fields.Free("travelPerStep");
        return new Traverse.Steps(leadM / steps);
    }

    internal sealed record Boxed(Traverse Value);

    private sealed record Teeth(int Count);
}
