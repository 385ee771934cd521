using System.Globalization;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes.Parts;
using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Forms;

/// <summary>The buttons of a recipe's form that add a part or take one away: their names, and what each does.</summary>
public static class PartsForm
{
    /// <summary>Name of the buttons that add a part.</summary>
    public const string AddField = "add-part";

    /// <summary>Name of the buttons that take a part away.</summary>
    public const string TakeAwayField = "take-away";

    /// <summary>Value of the button that adds a part.</summary>
    /// <param name="part">What it adds.</param>
    /// <param name="coil">To which coil, from 0; of poles alone.</param>
    public static string Adding(RecipePart part, int coil = 0) => string.Create(CultureInfo.InvariantCulture, $"{part.Key} {coil}");

    /// <summary>Value of the button that takes a part away.</summary>
    /// <param name="list">Path of the list that it stands in.</param>
    /// <param name="place">Which of them, from 0.</param>
    public static string TakingAway(string list, int place) => string.Create(CultureInfo.InvariantCulture, $"{list} {place}");

    /// <summary>The recipe with what the pressed button asks for.</summary>
    /// <param name="json">The recipe as the form has it.</param>
    /// <param name="form">The form.</param>
    public static (string Json, IReadOnlyList<Problem> Problems) Change(string json, IFormCollection form)
    {
        (string what, int place) = Split(form[AddField].ToString());
        if (RecipePart.Find(what) is { } part)
        {
            return RecipeParts.Add(json, part, place);
        }

        (string list, int which) = Split(form[TakeAwayField].ToString());
        return list.Length > 0
            ? RecipeParts.TakeAway(json, list, which)
            : (json, [new Problem("", "no part of this kind can be added to a recipe")]);
    }

    /// <summary>Key of the group of fields that the pressed button stands in.</summary>
    public static string GroupOf(IFormCollection form)
    {
        string list = RecipePart.Find(Split(form[AddField].ToString()).Word)?.List ?? Split(form[TakeAwayField].ToString()).Word;
        return list switch
        {
            "coils" => "bobbin",
            "steps" => "strings",
            _ => "poles",
        };
    }

    private static (string Word, int Number) Split(string value)
    {
        int space = value.LastIndexOf(' ');
        return space > 0 && int.TryParse(value[(space + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            ? (value[..space], number)
            : ("", -1);
    }
}
