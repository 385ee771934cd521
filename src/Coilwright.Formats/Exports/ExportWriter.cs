using System.Security.Cryptography;
using System.Text;
using Coilwright.Workshop.Exports;

namespace Coilwright.Formats.Exports;

/// <summary>Writes the files of an export into a folder, row by row.</summary>
/// <param name="folder">The folder; it is there.</param>
public sealed class ExportWriter(string folder)
{
    private const int Together = 1 << 16;

    private static readonly UTF8Encoding s_utf8 = new(encoderShouldEmitUTF8Identifier: false);

    private readonly List<ExportedFile> _files = [];
    private readonly List<ExportedDocument> _documents = [];

    /// <summary>Writes a table, and the documents that its rows name.</summary>
    /// <param name="table">The table.</param>
    /// <param name="rows">Its rows in their order.</param>
    /// <param name="counted">Told of each row.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task WriteAsync(ExportTable table, IAsyncEnumerable<object?[]> rows, Action counted, CancellationToken cancel)
    {
        await using FileStream file = new(Path.Combine(folder, table.File), FileMode.CreateNew, FileAccess.Write);
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        StringBuilder waiting = new(ExportLines.Header(table));
        long records = 0;
        await foreach (object?[] row in rows.WithCancellation(cancel).ConfigureAwait(false))
        {
            waiting.Append(ExportLines.Line(table, row));
            records++;
            counted();
            if (ExportLines.DocumentOf(table, row) is { } name)
            {
                await WriteDocumentAsync(name, (string)row[DocumentAt(table)]!, cancel).ConfigureAwait(false);
            }

            if (waiting.Length > Together)
            {
                await FlushAsync(file, hash, waiting, cancel).ConfigureAwait(false);
            }
        }

        await FlushAsync(file, hash, waiting, cancel).ConfigureAwait(false);
        ToDisk(file);
        _files.Add(new ExportedFile(table.File, records, Convert.ToHexStringLower(hash.GetHashAndReset())));
    }

    /// <summary>Writes what the export says of itself; last, since it names the others.</summary>
    /// <returns>The same, as written.</returns>
    public async Task<ExportManifest> FinishAsync(string shopName, DateTimeOffset createdUtc, CancellationToken cancel)
    {
        ExportManifest manifest = new(shopName, createdUtc, _files, _documents);
        await File.WriteAllTextAsync(Path.Combine(folder, ManifestFile.Name), ManifestFile.Write(manifest), s_utf8, cancel)
            .ConfigureAwait(false);
        return manifest;
    }

    private async Task WriteDocumentAsync(string name, string text, CancellationToken cancel)
    {
        string path = Path.Combine(folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        byte[] bytes = s_utf8.GetBytes(text);
        await File.WriteAllBytesAsync(path, bytes, cancel).ConfigureAwait(false);
        _documents.Add(new ExportedDocument(name, Convert.ToHexStringLower(SHA256.HashData(bytes))));
    }

    private static async Task FlushAsync(FileStream file, IncrementalHash hash, StringBuilder waiting, CancellationToken cancel)
    {
        byte[] bytes = s_utf8.GetBytes(waiting.ToString());
        waiting.Clear();
        hash.AppendData(bytes);
        await file.WriteAsync(bytes, cancel).ConfigureAwait(false);
    }

    private static void ToDisk(FileStream file) => file.Flush(flushToDisk: true);

    private static int DocumentAt(ExportTable table)
    {
        int at = 0;
        while (table.Columns[at].Kind != ExportKind.Document)
        {
            at++;
        }

        return at;
    }
}
