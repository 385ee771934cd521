using System.Buffers.Binary;
using System.Globalization;

namespace Coilwright.Storage;

/// <summary>The first hundred bytes of a shop's file, read as bytes so that nothing is touched.</summary>
/// <remarks>
/// Places of the marks: SQLite's published file format, "The Database Header": text at 0, user version at 60, application id at 68, most
/// significant byte first.
/// </remarks>
internal static class ShopHeader
{
    public const int Length = 100;
    private const int UserVersionAt = 60;
    private const int ApplicationIdAt = 68;

    /// <summary>Refuses a file that is not there, is no database, is another program's, or is newer.</summary>
    public static void Check(string path)
    {
        if (!File.Exists(path))
        {
            throw new ShopFileException(
                Directory.Exists(path) ? $"{path}: this is a folder, not a shop's file." : $"{path}: there is no such shop."
            );
        }

        FileInfo named = new(path);
        if ((named.ResolveLinkTarget(returnFinalTarget: true) as FileInfo ?? named).Length == 0)
        {
            // Opening a pipe would wait for ever; like a device it states no length.
            throw new ShopFileException($"{path}: this is not a shop's file: it is empty, or a pipe or device. Nothing in it was changed.");
        }

        byte[] header = new byte[Length];
        using (FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete))
        {
            if (file.ReadAtLeast(header, Length, throwOnEndOfStream: false) < Length || !header.AsSpan().StartsWith("SQLite format 3\0"u8))
            {
                throw new ShopFileException($"{path}: this is not a shop's file, or its beginning is damaged. Nothing in it was changed.");
            }
        }

        if (BinaryPrimitives.ReadInt32BigEndian(header.AsSpan(ApplicationIdAt)) != ShopFile.ApplicationId)
        {
            throw new ShopFileException($"{path}: this is a database of another program, not a shop's. Nothing in it was changed.");
        }

        RefuseNewer(path, BinaryPrimitives.ReadInt32BigEndian(header.AsSpan(UserVersionAt)));
    }

    public static void RefuseNewer(string path, int version)
    {
        if (version > ShopFile.SchemaVersion)
        {
            throw new ShopFileException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{path}: this shop was written by a newer Coilwright (its records are version {version}, this program knows "
                        + $"{ShopFile.SchemaVersion}). Nothing in it was changed; open it with the newer program."
                )
            );
        }
    }
}
