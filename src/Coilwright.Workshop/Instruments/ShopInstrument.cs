using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Workshop.Instruments;

/// <summary>An instrument of the shop: what it is called, how it is asked and where it hangs.</summary>
/// <param name="Name">What the shop calls it, alone among its instruments.</param>
/// <param name="Profile">How it is asked.</param>
/// <param name="Address">Where it hangs on the machine that serves; null where a bench computer passes its readings on.</param>
public sealed record ShopInstrument(string Name, MeterProfile Profile, MeterAddress? Address)
{
    /// <summary>Most instruments of a shop.</summary>
    public const int Most = 50;

    /// <summary>Fields that say where it hangs, one of them at most.</summary>
    private static readonly string[] s_places = ["tcp", "serial", "usbtmc"];

    /// <summary>Reads one of the rules' instruments.</summary>
    internal static ShopInstrument Read(JsonFields fields)
    {
        string name = fields.Text("name", "Bench 1");
        MeterProfile? profile = ProfileOf(fields);
        string[] given = [.. s_places.Where(place => fields.Has(place) && fields.Text(place).Length > 0)];
        if (given.Length > 1)
        {
            fields.Problems.Add(
                fields.PathOf(given[1]),
                "an instrument hangs in one place; give one of them",
                null,
                string.Join(", ", s_places)
            );
        }

        MeterAddress? address = given.Length == 0 ? null : AddressOf(fields, given[0]);
        if (address is MeterAddress.UsbTmc && profile is { Ask.Length: 0 })
        {
            fields.Problems.Add(fields.PathOf("usbtmc"), "such an instrument sends nothing unasked, and its profile asks nothing");
        }

        return new ShopInstrument(name, profile ?? MeterProfiles.All[0].Profile, address);
    }

    private static MeterAddress? AddressOf(JsonFields fields, string place)
    {
        string typed = fields.Text(place);
        if (place != "tcp")
        {
            return place == "serial" ? new MeterAddress.Serial(typed) : new MeterAddress.UsbTmc(typed);
        }

        ReadOutcome<MeterAddress> read = MeterAddress.ReadTcp(fields.PathOf(place), typed);
        foreach (Problem problem in read.Problems)
        {
            fields.Problems.Add(problem.Field, problem.Message, problem.Understood, problem.Allowed);
        }

        return read.Value;
    }

    private static MeterProfile? ProfileOf(JsonFields fields)
    {
        if (fields.IsObject("profile"))
        {
            return fields.Object("profile", MeterProfileReader.Fields);
        }

        string key = fields.Text("profile", MeterProfiles.All[0].Key);
        MeterProfile? found = MeterProfiles.Find(key);
        if (found is null && key.Length > 0)
        {
            string known = string.Join(", ", MeterProfiles.All.Select(one => one.Key));
            fields.Problems.Add(fields.PathOf("profile"), "no profile of this name comes with the program", $"\"{key}\"", known);
        }

        return found;
    }
}
