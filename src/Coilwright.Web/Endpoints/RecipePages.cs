using System.Text.Json.Nodes;
using Coilwright.Web.Forms;
using Coilwright.Web.Pages;
using Coilwright.Web.Views.Recipes;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Coilwright.Web.Endpoints;

/// <summary>The page of a recipe, as saved or as a form has it.</summary>
internal static class RecipePages
{
    /// <summary>A revision as saved.</summary>
    public static RazorComponentResult Of(
        ShowRecipe show,
        RevisionRecord recipe,
        (IReadOnlyList<RevisionRecord> Revisions, KnownParts Parts) known,
        RecipeView shown,
        (bool Saved, bool AsSaved) said
    ) =>
        Answers.Page<RecipePage>(
            new(Fields(show, (recipe, known.Revisions, known.Parts), (recipe.Json, LoadForm.Default()), shown))
            {
                ["Saved"] = said.Saved,
                ["AsSaved"] = said.AsSaved,
            }
        );

    /// <summary>A recipe as a form has it, with what is wrong in it.</summary>
    public static RazorComponentResult Of(
        ShowRecipe show,
        PostedRecipe posted,
        RecipeView shown,
        IReadOnlyList<Problem> problems,
        bool partsMade = false
    ) =>
        Answers.Page<RecipePage>(
            new(Fields(show, (posted.Base, posted.Revisions, posted.Parts), (posted.Json, LoadForm.Read(posted.Form)), shown))
            {
                ["Problems"] = problems,
                ["Posted"] = true,
                ["PartsMade"] = partsMade,
                ["PartsKept"] = posted.Form["parts"].ToString().Length > 0,
                ["Touched"] = partsMade ? PartsForm.GroupOf(posted.Form) : "",
                ["Reason"] = posted.Form["reason"].ToString(),
                ["Person"] = posted.Form["person"].ToString(),
            },
            problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity
        );

    private static Dictionary<string, object?> Fields(
        ShowRecipe show,
        (RevisionRecord Recipe, IReadOnlyList<RevisionRecord> Revisions, KnownParts Parts) on,
        (string Json, JsonNode Load) document,
        RecipeView shown
    ) =>
        new()
        {
            ["Recipe"] = on.Recipe,
            ["Revisions"] = on.Revisions,
            ["Document"] = JsonNode.Parse(document.Json),
            ["Load"] = document.Load,
            ["View"] = show.View(on.Recipe, on.Revisions, on.Parts, (document.Json, document.Load.ToJsonString()), shown, settled: true),
        };
}
