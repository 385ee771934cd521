using System.Globalization;

namespace Coilwright.Workshop.Batches;

/// <summary>Tags of a batch's coils: prefix and number, at least three digits.</summary>
public static class BatchTags
{
    public static string Of(BatchRecord batch, int number) => batch.TagPrefix + number.ToString("000", CultureInfo.InvariantCulture);

    /// <summary>The number in a tag of this batch, or null for a tag of another make.</summary>
    public static int? NumberOf(BatchRecord batch, string tag) =>
        tag.StartsWith(batch.TagPrefix, StringComparison.OrdinalIgnoreCase)
        && int.TryParse(tag.AsSpan(batch.TagPrefix.Length), NumberStyles.None, CultureInfo.InvariantCulture, out int number)
        && number > 0
            ? number
            : null;

    /// <summary>A tag as the batch writes it: "c-7" and a scanned "H-12/C-007" are C-007. A tag of another make stays as typed.</summary>
    public static string Tidy(BatchRecord batch, string typed)
    {
        string tag = WithoutBatch(batch, typed.Trim());
        return NumberOf(batch, tag) is { } number ? Of(batch, number) : tag;
    }

    /// <summary>What the code on a tag says: batch and tag, so that it opens its coil from any page.</summary>
    public static string CodeOf(BatchRecord batch, string tag) => $"{batch.Name}/{tag}";

    /// <summary>The tag in a code scanned where a resistance was expected; null when it is no tag of this batch.</summary>
    public static string? Scanned(BatchRecord batch, string typed)
    {
        string text = typed.Trim(),
            tag = WithoutBatch(batch, text);
        bool named = tag.Length < text.Length || batch.TagPrefix.Any(char.IsLetter);
        return named && NumberOf(batch, tag) is { } number ? Of(batch, number) : null;
    }

    private static string WithoutBatch(BatchRecord batch, string text) =>
        text.StartsWith(batch.Name + "/", StringComparison.OrdinalIgnoreCase) ? text[(batch.Name.Length + 1)..] : text;

    /// <summary>The tag after the one entered last if it is free, else the lowest free one; null when all are taken.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="takenInOrder">Tags that have readings in force, in order of entry.</param>
    /// <param name="wanted">Coils wanted; the batch's own number unless said.</param>
    public static string? Next(BatchRecord batch, IReadOnlyList<string> takenInOrder, int? wanted = null)
    {
        int last = wanted ?? batch.Quantity;
        HashSet<int> taken = [.. takenInOrder.Select(tag => NumberOf(batch, tag)).OfType<int>()];
        int after = takenInOrder.Count == 0 ? 1 : (NumberOf(batch, takenInOrder[^1]) ?? 0) + 1;
        int? next =
            after <= last && !taken.Contains(after)
                ? after
                : Enumerable.Range(1, last).Cast<int?>().FirstOrDefault(number => !taken.Contains(number!.Value));
        return next is { } free ? Of(batch, free) : null;
    }
}
