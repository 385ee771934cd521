using Coilwright.Physics;
using Coilwright.Physics.Winding;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>Reads one entry of "coils".</summary>
internal static class CoilReader
{
    public static RecipeCoil Read(JsonFields fields)
    {
        fields.Free("notes", "tags");
        return new RecipeCoil
        {
            Name = fields.Text("name", "main"),
            Bobbin = fields.Object("bobbin", Bobbin, "{ \"coreLength\": \"64 mm\", … }")!,
            Wire = fields.Object("wire", WireReader.Read, "{ \"gauge\": \"AWG 42\" }")!,
            Winding = fields.Object("winding", Winding, "{ \"turns\": 8000 }")!,
            Poles = fields.Objects("poles", PoleReader.Read, 12),
            Position = fields.Object("position", Position) ?? RecipePoint.Origin,
            Hot = fields.Word("hot", ["start", "finish"]) switch
            {
                "start" => CoilEnd.Start,
                "finish" => CoilEnd.Finish,
                _ => null,
            },
            Tape = fields.Object("tape", Tape),
            Targets = fields.Object("targets", TargetReader.Read) ?? new Dictionary<string, Target>(),
        };
    }

    private static RecipeBobbin Bobbin(JsonFields fields)
    {
        fields.Free("notes");
        Entered length = fields.RequiredSize("coreLength", Allowed.CoreLength);
        Entered width = fields.RequiredSize("coreWidth", Allowed.CoreWidth);
        bool given = fields.Has("endRadius");
        Entered radius = fields.OptionalSize("endRadius", Allowed.EndRadius) ?? new Entered(Math.Min(length.Si, width.Si) / 2, "", "mm");
        if (given && radius.Si > Math.Min(length.Si, width.Si) / 2 + RecipeChecks.SlackM)
        {
            fields.Problems.Add(
                fields.PathOf("endRadius"),
                "a corner cannot be rounder than half the smaller side of the former",
                QuantityParser.Echo(radius, QuantityKind.Length),
                "at most " + QuantityParser.FormatIn(Math.Min(length.Si, width.Si) / 2, QuantityKind.Length, "mm")
            );
        }

        if (width.Si > length.Si + RecipeChecks.SlackM)
        {
            fields.Problems.Add(
                fields.PathOf("coreWidth"),
                "the former is wider than long; its length lies along the row of strings",
                QuantityParser.Echo(width, QuantityKind.Length),
                "at most the coreLength, " + QuantityParser.Echo(length, QuantityKind.Length)
            );
        }

        Entered height = fields.RequiredSize("windingHeight", Allowed.WindingHeight);
        Entered? room = fields.OptionalSize("maxBuild", Allowed.MaxBuild);
        double? fillLimit = fields.Number("fillLimit", 0.3, 0.95);
        if (fillLimit is not null && room is null)
        {
            fields.Problems.Add(fields.PathOf("fillLimit"), "a limit of fill needs the room it is a part of: state maxBuild too");
        }

        Entered? wall = fields.OptionalSize("wall", Allowed.Wall);
        CheckWall(fields, wall, width);
        return new RecipeBobbin(length, width, radius, height, room, fillLimit, fields.Text("material"))
        {
            Wall = wall,
            Flange = fields.OptionalSize("flange", Allowed.Wall),
            Making = MakingReader.Read(fields),
        };
    }

    private static void CheckWall(JsonFields fields, Entered? wall, Entered width)
    {
        if (wall is Entered thick && thick.Si > width.Si / 2 + RecipeChecks.SlackM)
        {
            fields.Problems.Add(
                fields.PathOf("wall"),
                "the wall is thicker than half the former",
                QuantityParser.Echo(thick, QuantityKind.Length),
                "at most " + QuantityParser.FormatIn(width.Si / 2, QuantityKind.Length, "mm")
            );
        }
    }

    private static RecipeTape Tape(JsonFields fields) =>
        new(fields.Required("thickness", Allowed.Tape), fields.Word("material", Catalogue.Insulators, required: true) ?? "");

    private static RecipeWinding Winding(JsonFields fields)
    {
        fields.Free("notes");
        return new RecipeWinding
        {
            Turns = fields.Number("turns", 1, 100_000, required: true) ?? double.NaN,
            Direction =
                fields.Word("direction", ["counter-clockwise", "clockwise"]) == "clockwise"
                    ? WindingDirection.Clockwise
                    : WindingDirection.CounterClockwise,
            Lay = fields.Word("lay", ["scattered", "even"]) == "even" ? Lay.Even : Lay.Scattered,
            Pitch = fields.Optional("pitch", Allowed.Pitch),
            Tension = fields.Optional("tension", Allowed.Tension),
            Speed = fields.Optional("speed", Allowed.Speed),
            Build = fields.Optional("build", Allowed.MaxBuild),
            Capacitance = fields.Optional("capacitance", Allowed.CoilCapacitance),
            Stretch = fields.Optional("stretch", Allowed.Stretch),
        };
    }

    private static RecipePoint Position(JsonFields fields) =>
        new(
            fields.Optional("x", Allowed.Place) ?? RecipePoint.Origin.X,
            fields.Optional("y", Allowed.Place) ?? RecipePoint.Origin.Y,
            fields.Optional("z", Allowed.Place) ?? RecipePoint.Origin.Z
        );
}
