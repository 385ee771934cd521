using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Coilwright.Input;

/// <summary>The certificate with which a shop is served over HTTPS: one of the shop's own, or one that is made here.</summary>
internal static class ShopCertificate
{
    /// <summary>A certificate that is made here is good for so long; browsers refuse longer ones.</summary>
    private static readonly TimeSpan s_good = TimeSpan.FromDays(397);

    /// <summary>A new one is made when the old one ends so soon.</summary>
    private static readonly TimeSpan s_soon = TimeSpan.FromDays(30);

    /// <summary>Reads a certificate and its key, as PEM.</summary>
    /// <exception cref="WrongInputException">They cannot be read, do not belong together, or the certificate has ended.</exception>
    public static X509Certificate2 Read(string certificate, string key, DateTimeOffset now)
    {
        try
        {
            X509Certificate2 read = X509Certificate2.CreateFromPemFile(certificate, key);
            if (read.NotAfter.ToUniversalTime() < now.UtcDateTime)
            {
                string ended = read.NotAfter.ToUniversalTime().ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
                read.Dispose();
                throw WrongInputException.About("--certificate", $"{certificate} ended on {ended}", "one that is in force");
            }

            return read;
        }
        catch (Exception wrong) when (wrong is IOException or CryptographicException or ArgumentException or UnauthorizedAccessException)
        {
            throw WrongInputException.About(
                "--certificate",
                $"{certificate} and {key} cannot be read as a certificate and its key: {wrong.Message}",
                "two PEM files that belong together"
            );
        }
    }

    /// <summary>The certificate beside the shop's file; made when there is none, it ends soon, or other names are asked for.</summary>
    /// <param name="shop">The shop's file.</param>
    /// <param name="names">Names and addresses that it is to stand for.</param>
    /// <param name="now">The time.</param>
    public static X509Certificate2 OfShop(string shop, IReadOnlyList<string> names, DateTimeOffset now)
    {
        (string certificate, string key) = (shop + ".certificate.pem", shop + ".certificate-key.pem");
        if (File.Exists(certificate) && File.Exists(key))
        {
            X509Certificate2 there = Read(certificate, key, DateTimeOffset.MinValue);
            bool lasts = there.NotAfter.ToUniversalTime() > (now + s_soon).UtcDateTime;
            if (lasts && names.All(name => there.MatchesHostname(name, allowWildcards: false, allowCommonName: false)))
            {
                return there;
            }

            there.Dispose();
        }

        Make(certificate, key, names, now);
        return Read(certificate, key, now);
    }

    /// <summary>What a person compares with what the browser shows: SHA-256, in pairs.</summary>
    public static string Fingerprint(X509Certificate2 certificate) =>
        string.Join(':', Convert.ToHexString(certificate.GetCertHash(HashAlgorithmName.SHA256)).Chunk(2).Select(pair => new string(pair)));

    private static void Make(string certificatePath, string keyPath, IReadOnlyList<string> names, DateTimeOffset now)
    {
        using ECDsa key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        CertificateRequest request = new("CN=Coilwright shop", key, HashAlgorithmName.SHA256);
        SubjectAlternativeNameBuilder stands = new();
        foreach (string name in names)
        {
            if (IPAddress.TryParse(name, out IPAddress? address))
            {
                stands.AddIpAddress(address);
            }
            else
            {
                stands.AddDnsName(name);
            }
        }

        const string ServerAuthentication = "1.3.6.1.5.5.7.3.1"; // RFC 5280, 4.2.1.12
        request.CertificateExtensions.Add(stands.Build());
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(false, false, 0, true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, true));
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension([new Oid(ServerAuthentication)], false));
        using X509Certificate2 made = request.CreateSelfSigned(now.AddDays(-1), now + s_good);
        FileStreamOptions secret = new() { Mode = FileMode.Create, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            File.Delete(keyPath); // one that lies there keeps its mode
            secret.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        using (StreamWriter writer = new(keyPath, secret))
        {
            writer.Write(key.ExportPkcs8PrivateKeyPem());
        }

        File.WriteAllText(certificatePath, made.ExportCertificatePem());
    }
}
