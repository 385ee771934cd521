using System.IO.Compression;
using System.Security.Cryptography;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Workshop.Backups;

namespace Coilwright.Storage.Backups;

/// <summary>The file of a backup: a zip of the shop's file and of what it says of itself.</summary>
internal static class BackupArchive
{
    private const string Format = "coilwright.backup/1",
        ManifestEntry = "manifest.json",
        ShopEntry = "shop.db";

    /// <summary>A manifest is a few thousand letters; more is none.</summary>
    private const int MostManifest = 1 << 20;

    private static readonly JsonSerializerOptions s_options = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        RespectRequiredConstructorParameters = true,
        RespectNullableAnnotations = true,
    };

    /// <summary>Writes it, down to the disk.</summary>
    public static async Task WriteAsync(string path, string shopFile, BackupManifest manifest, CancellationToken cancel)
    {
        await using FileStream file = new(path, FileMode.CreateNew, FileAccess.Write);
        await using (
            ZipArchive zip = await ZipArchive.CreateAsync(file, ZipArchiveMode.Create, leaveOpen: true, entryNameEncoding: null, cancel)
        )
        {
            await using (Stream text = await zip.CreateEntry(ManifestEntry).OpenAsync(cancel))
            {
                await JsonSerializer.SerializeAsync(text, new Document(Format, manifest), s_options, cancel);
            }

            await using Stream to = await zip.CreateEntry(ShopEntry, CompressionLevel.Fastest).OpenAsync(cancel);
            await using FileStream from = File.OpenRead(shopFile);
            await from.CopyToAsync(to, cancel);
        }

        ToDisk(file);
    }

    /// <summary>What a backup says of itself.</summary>
    /// <exception cref="BackupException">It is none, or it is damaged.</exception>
    public static BackupManifest ReadManifest(string path) => Guard(path, () =>
        {
            using ZipArchive zip = ZipFile.OpenRead(path);
            return Manifest(path, zip);
        });

    /// <summary>Takes the shop's file out and holds it against the manifest.</summary>
    /// <param name="path">The backup.</param>
    /// <param name="to">File to write, which must not be there; null to read and write nothing.</param>
    /// <exception cref="BackupException">It is none, or it is damaged.</exception>
    public static BackupManifest Extract(string path, string? to) => Guard(path, () =>
        {
            using ZipArchive zip = ZipFile.OpenRead(path);
            BackupManifest manifest = Manifest(path, zip);
            ZipArchiveEntry entry = zip.GetEntry(ShopEntry) ?? throw Foreign(path);
            using Stream from = entry.Open();
            using Stream into = to is null ? Stream.Null : new FileStream(to, FileMode.CreateNew, FileAccess.Write);
            (long bytes, string hash) = Copy(from, into, manifest.Bytes);
            ToDisk(into as FileStream);
            return bytes == manifest.Bytes && hash == manifest.Sha256
                ? manifest
                : throw new BackupException($"{path}: this backup is damaged: what is in it is not what was written. Take another one.");
        });

    /// <summary>SHA-256 of a file, in hexadecimal digits.</summary>
    public static async Task<string> HashAsync(string path, CancellationToken cancel)
    {
        await using FileStream file = File.OpenRead(path);
        return Convert.ToHexStringLower(await SHA256.HashDataAsync(file, cancel));
    }

    /// <summary>Waits until the disk has it, so that a name is never given to what a power cut would take.</summary>
    private static void ToDisk(FileStream? file) => file?.Flush(flushToDisk: true);

    /// <summary>Copies no more than was promised and one byte, so that a forged file cannot fill the disk.</summary>
    private static (long Bytes, string Hash) Copy(Stream from, Stream to, long most)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        byte[] part = new byte[1 << 17];
        long bytes = 0;
        for (int read = from.Read(part); read > 0 && bytes <= most; read = from.Read(part))
        {
            bytes += read;
            hash.AppendData(part, 0, read);
            to.Write(part, 0, read);
        }

        return (bytes, Convert.ToHexStringLower(hash.GetHashAndReset()));
    }

    private static BackupManifest Manifest(string path, ZipArchive zip)
    {
        ZipArchiveEntry? entry = zip.GetEntry(ManifestEntry);
        if (entry is null || entry.Length > MostManifest)
        {
            throw Foreign(path);
        }

        using Stream text = entry.Open();
        Document? read = JsonSerializer.Deserialize<Document>(text, s_options);
        return read?.Format == Format ? read.Backup : throw Foreign(path);
    }

    private static BackupException Foreign(string path, Exception? cause = null) =>
        new($"{path}: this is not a backup of a shop. Backups are written by coilwright backup and end in {BackupName.Ending}.", cause);

    private static T Guard<T>(string path, Func<T> read)
    {
        try
        {
            return read();
        }
        catch (Exception missing) when (missing is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new BackupException($"{path}: there is no such backup.", missing);
        }
        catch (JsonException wrong)
        {
            throw Foreign(path, wrong);
        }
        catch (InvalidDataException wrong)
        {
            throw new BackupException($"{path}: this is not a backup of a shop, or it is damaged: {wrong.Message}", wrong);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new BackupException($"{path}: the backup cannot be read: {failure.Message}", failure);
        }
    }

    private sealed record Document(string Format, BackupManifest Backup);
}
