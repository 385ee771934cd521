using Coilwright.Analysis.Planning;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Formats.Plans;

/// <summary>Reads a station and its hours.</summary>
internal static class StationReader
{
    private const int MostOpenings = 1000;
    private const string Example = "[ { \"from\": \"0 h\", \"to\": \"8 h\", \"every\": \"24 h\" } ]";

    public static Station Read(JsonFields fields)
    {
        fields.Free("notes");
        IReadOnlyList<OpenHours>? hours = fields.Has("hours") ? Hours(fields) : null;
        return new Station(fields.Text("name", "Winder 1")) { Hours = hours };
    }

    private static List<OpenHours> Hours(JsonFields fields)
    {
        List<OpenHours> hours =
        [
            .. fields.Objects("hours", one => new Box(Opening(one)), MostOpenings).Select(box => box?.Hours ?? default),
        ];
        if (fields.IsList("hours") && hours.Count == 0)
        {
            fields.Problems.Add(fields.PathOf("hours"), "a calendar without hours: leave it out where it is always open", "[]", Example);
        }

        return hours;
    }

    private static OpenHours Opening(JsonFields fields)
    {
        OpenHours hours = new(
            fields.Required("from", PlanLimits.Since with { Example = "0 h" }).Si,
            fields.Required("to", PlanLimits.Since with { Example = "8 h" }).Si,
            fields.Optional("every", PlanLimits.Period)?.Si
        );
        if (hours.ToS <= hours.FromS)
        {
            fields.Problems.Add(
                fields.PathOf("to"),
                "this opening ends before it begins",
                PlanTimes.Describe(hours.ToS),
                $"after {PlanTimes.Describe(hours.FromS)}"
            );
        }

        if (hours.EveryS < hours.ToS - hours.FromS)
        {
            fields.Problems.Add(
                fields.PathOf("every"),
                "it comes again before it has ended",
                PlanTimes.Describe(hours.EveryS.Value),
                $"{PlanTimes.Describe(hours.ToS - hours.FromS)} or more"
            );
        }

        return hours;
    }

    private sealed record Box(OpenHours Hours);
}
