using System.Globalization;
using Coilwright.Application.Composition;
using Coilwright.Web.Forms;
using Coilwright.Workshop.Recipes;
using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Endpoints;

/// <summary>A recipe's form as posted, and the revision it was filled in on.</summary>
/// <param name="Base">That revision.</param>
/// <param name="Revisions">All revisions of the recipe.</param>
/// <param name="Parts">What the shop knows of its parts.</param>
/// <param name="Form">The fields.</param>
internal sealed record PostedRecipe(RevisionRecord Base, IReadOnlyList<RevisionRecord> Revisions, KnownParts Parts, IFormCollection Form)
{
    /// <summary>The recipe as the form has it: its parts as the draft has them, then field by field.</summary>
    public string Json { get; init; } = RecipeForm.Apply(RecipeForm.PartsOf(Base.Json, Form), Form);

    /// <summary>The load as the form has it.</summary>
    public string Load { get; } = LoadForm.Read(Form).ToJsonString();

    /// <summary>Reads the form; null when there is no such revision.</summary>
    /// <param name="id">The recipe.</param>
    /// <param name="request">The request.</param>
    /// <param name="shop">The shop.</param>
    /// <param name="cancel">Stops it.</param>
    /// <param name="field">The field that names the revision.</param>
    public static async Task<PostedRecipe?> ReadAsync(
        Guid id,
        HttpRequest request,
        ShopServices shop,
        CancellationToken cancel,
        string field = "base"
    )
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        IReadOnlyList<RevisionRecord> revisions = await shop.Records.Recipes.RevisionsAsync(id, cancel);
        RevisionRecord? found = revisions.FirstOrDefault(one =>
            one.Number.ToString(CultureInfo.InvariantCulture) == form[field].ToString()
        );
        return found is null ? null : new PostedRecipe(found, revisions, await shop.Recipes.KnownPartsAsync(cancel), form);
    }
}
