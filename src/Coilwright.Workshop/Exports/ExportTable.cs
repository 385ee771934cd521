namespace Coilwright.Workshop.Exports;

/// <summary>What a column of an export holds.</summary>
public enum ExportKind
{
    /// <summary>An id, a <see cref="Guid"/>.</summary>
    Id,

    /// <summary>A text as it was entered.</summary>
    Text,

    /// <summary>One of a few words.</summary>
    Word,

    /// <summary>A number, a <see cref="double"/>.</summary>
    Number,

    /// <summary>A whole number, a <see cref="long"/>.</summary>
    Count,

    /// <summary>True or false.</summary>
    Flag,

    /// <summary>A moment in UTC, a <see cref="DateTimeOffset"/>.</summary>
    Time,

    /// <summary>A JSON object as its text.</summary>
    Json,

    /// <summary>A document of its own, verbatim.</summary>
    Document,
}

/// <summary>A column of an exported table.</summary>
/// <param name="Name">Its name in the file, with its unit.</param>
/// <param name="Property">Name of the property that records keep it under.</param>
/// <param name="Kind">What it holds.</param>
/// <param name="IsOptional">True when it may be missing.</param>
public sealed record ExportColumn(string Name, string Property, ExportKind Kind, bool IsOptional = false)
{
    /// <summary>The words that it may hold; empty for other kinds.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];
}

/// <summary>Columns that together are one of a kind in their table; where one is missing they are not.</summary>
/// <param name="Columns">Names of the columns.</param>
/// <param name="IgnoresCase">True when capitals and small letters (a to z) count as the same.</param>
public sealed record ExportKey(IReadOnlyList<string> Columns, bool IgnoresCase = false);

/// <summary>Columns that name a record by its first key.</summary>
/// <param name="Columns">Names of the columns.</param>
/// <param name="File">The table of the record, which stands above, or the same table.</param>
public sealed record ExportLink(IReadOnlyList<string> Columns, string File);

/// <summary>Records of one kind as an export writes them: one file, a line each. A row is its values in the order of the columns.</summary>
/// <param name="File">Name of the file; its ending says how it is written.</param>
/// <param name="Records">Name that the store keeps these records under.</param>
/// <param name="Title">What they are, in words.</param>
public sealed record ExportTable(string File, string Records, string Title)
{
    /// <summary>Its columns.</summary>
    public required IReadOnlyList<ExportColumn> Columns { get; init; }

    /// <summary>Properties by which rows are ordered; none for the order of entry.</summary>
    public IReadOnlyList<string> Order { get; init; } = [];

    /// <summary>What is one of a kind; links name the first.</summary>
    public IReadOnlyList<ExportKey> Keys { get; init; } = [];

    /// <summary>What names other records.</summary>
    public IReadOnlyList<ExportLink> Links { get; init; } = [];

    /// <summary>Place of a column in a row.</summary>
    /// <exception cref="ArgumentException">There is no such column.</exception>
    public int PlaceOf(string column)
    {
        for (int at = 0; at < Columns.Count; at++)
        {
            if (Columns[at].Name == column)
            {
                return at;
            }
        }

        throw new ArgumentException($"{File} has no column {column}.", nameof(column));
    }
}
