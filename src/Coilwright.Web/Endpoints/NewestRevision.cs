using System.Globalization;
using Coilwright.Application.Composition;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Circuits;
using Coilwright.Workshop.Solving;
using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Endpoints;

/// <summary>The newest revision of a recipe, for pages that ask about it, and what becomes of their answers.</summary>
internal static class NewestRevision
{
    /// <summary>A usual player's load.</summary>
    public static LoadCircuit Load() => UsualLoad.Player.Load;

    /// <summary>The newest revision as kept and as read; null when there is none.</summary>
    public static async Task<(RevisionRecord Record, Recipe Recipe)?> OfAsync(Guid id, ShopServices shop, CancellationToken cancel)
    {
        IReadOnlyList<RevisionRecord> revisions = await shop.Records.Recipes.RevisionsAsync(id, cancel);
        RevisionRecord? newest = revisions.MaxBy(revision => revision.Number);
        return newest is not null && RecipeReader.Read(newest.Json) is { Ok: true, Value: { } recipe }
            ? (newest, (await shop.Recipes.KnownPartsAsync(cancel)).Fill(recipe))
            : null;
    }

    /// <summary>A recipe that was found becomes a draft of the same recipe, or a recipe of its own.</summary>
    /// <returns>Where it stands now, or the problems.</returns>
    public static async Task<(Guid Id, IReadOnlyList<Problem> Problems)> KeepAsync(
        RevisionRecord newest,
        IFormCollection form,
        ShopServices shop,
        CancellationToken cancel
    )
    {
        string json = form["json"].ToString(),
            reason = form["reason"].ToString(),
            person = form["person"].ToString();
        if (form["as"].ToString() != "new")
        {
            int seen = int.TryParse(form["base"].ToString(), NumberStyles.None, CultureInfo.InvariantCulture, out int number)
                ? number
                : newest.Number;
            return (
                newest.RecipeId,
                (
                    await shop.Recipes.SaveAsync(
                        newest.RecipeId,
                        json,
                        reason.Length > 0 ? reason : "worked backwards from targets",
                        person,
                        seen,
                        cancel
                    )
                ).Problems
            );
        }

        Guid id = Guid.NewGuid();
        return RecipeReader.Read(json) is { Ok: false } wrong
            ? (id, wrong.Problems)
            : (
                id,
                (
                    await shop.Recipes.SaveAsync(
                        id,
                        new RecipeEdit(json).Named(form["name"].ToString().Trim()).Json,
                        reason,
                        person,
                        0,
                        cancel
                    )
                ).Problems
            );
    }
}
