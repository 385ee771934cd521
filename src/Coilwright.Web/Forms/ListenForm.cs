using System.Globalization;
using Coilwright.Application.Listening;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Measuring;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Circuits;

namespace Coilwright.Web.Forms;

/// <summary>What the listening pages ask for: designs with their loads, what is played, and at which level.</summary>
/// <param name="Question">What is asked.</param>
/// <param name="Typed">What was typed into each field.</param>
/// <param name="Problems">What of it does not read.</param>
public sealed record ListenForm(ListenQuestion Question, FormValues Typed, IReadOnlyList<Problem> Problems)
{
    /// <summary>What is typed as text, with its label, an example and by which name it is understood.</summary>
    public static IReadOnlyList<(string Name, string Label, string Hint, string Example, string Understood)> Texts { get; } =
    [
        ("string", "Which string", "1 is the thinnest; the one nearest to 110 Hz unless you say another", "5", ""),
        ("pitch", "Pitch", "the open string unless you say another", PluckLimits.Pitch.Example, "listen.pitch"),
        ("pluck", "Pluck, from the bridge", "120 mm unless you say another", PluckLimits.Pluck.Example, "listen.pluck"),
        ("width", "Width of the pluck", "a sharp corner unless you say another", PluckLimits.Width.Example, "listen.width"),
        ("length", "Length of the sound", "4 s unless you say another", "4 s", "listen.length"),
    ];

    /// <summary>Fields that mean something for one string alone.</summary>
    private static readonly string[] s_ofOneString = ["string", "pitch"];

    /// <summary>The same again as a query, for addresses of sounds and of the blind test.</summary>
    public string Query =>
        string.Join('&', Fields().Where(one => one.Value.Length > 0).Select(one => $"{one.Name}={Uri.EscapeDataString(one.Value)}"));

    /// <summary>Every field with its value, as a form sends it.</summary>
    public IEnumerable<(string Name, string Value)> Fields()
    {
        for (int place = 0; place < Question.Designs.Count; place++)
        {
            if (Question.Designs[place] is { } choice)
            {
                yield return (Name("design", place), choice.RecipeId.ToString());
                yield return (Name("load", place), choice.LoadKey);
            }
        }

        foreach ((string name, string value) in PlayedFields())
        {
            yield return (name, value);
        }
    }

    /// <summary>The fields of what is played.</summary>
    public IEnumerable<(string Name, string Value)> PlayedFields() =>
        [
            ("play", Question.Playing == Playing.Strum ? "strum" : "one"),
            .. Texts.Select(text => (text.Name, Typed[text.Name].Trim())),
            ("level", Question.Matched ? "matched" : "true"),
        ];

    /// <summary>Name of a field that stands once for each design.</summary>
    public static string Name(string field, int place) => string.Create(CultureInfo.InvariantCulture, $"{field}{place}");

    /// <summary>Reads an address or a form; where it names no design, or one alone, others of the shop are taken.</summary>
    /// <param name="sent">What was sent.</param>
    /// <param name="recipes">The shop's recipes.</param>
    /// <param name="most">Most designs.</param>
    public static ListenForm Read(
        IEnumerable<KeyValuePair<string, Microsoft.Extensions.Primitives.StringValues>> sent,
        IReadOnlyList<RevisionRecord> recipes,
        int most
    )
    {
        FormValues typed = FormValues.Of([.. sent.Select(field => (field.Key, field.Value.ToString()))]);
        List<Problem> problems = [];
        ListenChoice?[] designs = [.. Enumerable.Range(0, most).Select(place => Choice(typed, place, recipes, problems))];
        if (typed["level"].Length == 0)
        {
            Fill(designs, recipes);
        }
        else if (problems.Count == 0 && designs.All(design => design is null))
        {
            problems.Add(new Problem("design0", "choose a design to hear", Allowed: "a recipe of the list"));
        }

        bool strum = typed["play"] == "strum";
        PluckQuestion pluck = Pluck(typed, strum, problems);
        ListenQuestion question = new(designs, strum ? Playing.Strum : Playing.One, pluck, typed["level"] != "true");
        return new ListenForm(question, typed, problems);
    }

    /// <summary>Problems for the list on top, under what their fields are called on the page.</summary>
    public static IReadOnlyList<Problem> Named(IReadOnlyList<Problem> problems)
    {
        string Called(string field)
        {
            string letter = field.Length > 0 ? ((char)(field[^1] - '0' + 'A')).ToString() : "";
            return field switch
            {
                ['d', 'e', 's', 'i', 'g', 'n', _] => letter,
                ['l', 'o', 'a', 'd', _] => "load of " + letter,
                _ => field,
            };
        }

        return [.. problems.Select(problem => problem with { Field = Called(problem.Field) })];
    }

    private static ListenChoice? Choice(FormValues typed, int place, IReadOnlyList<RevisionRecord> recipes, List<Problem> problems)
    {
        string recipe = typed[Name("design", place)],
            load = typed[Name("load", place)];
        if (recipe.Length == 0)
        {
            return null;
        }

        if (!Guid.TryParse(recipe, out Guid id) || recipes.All(one => one.RecipeId != id))
        {
            problems.Add(new Problem(Name("design", place), "no such recipe is in this shop", Allowed: "a recipe of the list"));
            return null;
        }

        return new ListenChoice(id, load.Length > 0 ? load : UsualLoad.Player.Key);
    }

    /// <summary>Two designs stand there before anybody has chosen: those named, then the first ones of the shop.</summary>
    private static void Fill(ListenChoice?[] designs, IReadOnlyList<RevisionRecord> recipes)
    {
        for (int place = 0; place < 2; place++)
        {
            RevisionRecord? free = recipes.FirstOrDefault(recipe => designs.All(design => design?.RecipeId != recipe.RecipeId));
            designs[place] ??= free is null ? null : new ListenChoice(free.RecipeId, UsualLoad.Player.Key);
        }
    }

    private static PluckQuestion Pluck(FormValues typed, bool strum, List<Problem> problems)
    {
        QuantityReader reader = new(unitRequired: false);
        PluckQuestion pluck = new(
            StringOf(typed["string"], problems),
            reader.Read("pitch", typed["pitch"], PluckLimits.Pitch),
            reader.Read("pluck", typed["pluck"], PluckLimits.Pluck),
            reader.Read("width", typed["width"], PluckLimits.Width),
            reader.Read("length", typed["length"], PluckLimits.LengthOnPage)
        );
        problems.AddRange(reader.Problems);
        foreach (string name in s_ofOneString.Where(name => strum && typed[name].Trim().Length > 0))
        {
            problems.Add(new Problem(name, "is for one string; now all open strings are strummed", Allowed: "an empty field"));
        }

        return pluck;
    }

    private static int? StringOf(string text, List<Problem> problems)
    {
        const int Most = 24;
        if (text.Trim().Length == 0)
        {
            return null;
        }

        if (CountParser.TryParse(text, 1, Most, out int number, out string why))
        {
            return number;
        }

        problems.Add(new Problem("string", why, null, CountParser.Range(1, Most)));
        return null;
    }
}
