using System.Threading.RateLimiting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.RateLimiting;

namespace Coilwright.Web.Hosting.Access;

/// <summary>How often one computer may try a password or a PIN, whatever names it tries.</summary>
internal static class SignInLimit
{
    /// <summary>Name of the limit, as an address asks for it.</summary>
    public const string Name = "sign-in";

    /// <summary>Tries of one computer a minute.</summary>
    public const int MostAMinute = 30;

    /// <summary>Sets it up.</summary>
    public static void Set(RateLimiterOptions options)
    {
        options.AddPolicy(Name, context =>
            RateLimitPartition.GetFixedWindowLimiter(
                context.Connection.RemoteIpAddress?.ToString() ?? "",
                _ => new FixedWindowRateLimiterOptions { PermitLimit = MostAMinute, Window = TimeSpan.FromMinutes(1) }
            )
        );
        options.OnRejected = async (rejected, _) =>
            await Refusal.WriteAsync(
                rejected.HttpContext,
                StatusCodes.Status429TooManyRequests,
                "account",
                "Too many tries from this computer. Wait a minute, then try again."
            );
    }
}
