using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Endpoints;

/// <summary>A batch as a form asks for it.</summary>
internal static class BatchForm
{
    /// <summary>Begins the batch, or gives every problem.</summary>
    public static async Task<(Guid Id, IReadOnlyList<Problem> Problems)> BeginAsync(
        ShopServices shop, RevisionRecord revision, IFormCollection form, CancellationToken cancel)
    {
        string quantity = form["quantity"].ToString();
        if (!CountText.TryParse(quantity, int.MinValue, int.MaxValue, out int coils, out string why))
        {
            return (Guid.Empty, [new Problem("quantity", why, null, "a whole number of coils, such as 24")]);
        }

        BatchRecord batch = new(
            Guid.TryParse(form["id"], out Guid made) ? made : Guid.NewGuid(), form["name"].ToString(), revision.RecipeId, revision.Number, form["coil"].ToString(),
            coils, form["prefix"].ToString(), form["spool"].ToString(), form["machine"].ToString(), form["person"].ToString(), shop.Time.GetUtcNow());
        return (batch.Id, await shop.Winding.BeginBatchAsync(batch, cancel));
    }
}
