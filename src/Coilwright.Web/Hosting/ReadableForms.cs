using System.Globalization;
using Coilwright.Workshop.Entry;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Hosting;

/// <summary>Reads a sent form before any page does, and refuses in words what is none: then nothing of it was stored.</summary>
public sealed class ReadableForms(RequestDelegate next)
{
    public async Task InvokeAsync(HttpContext context)
    {
        HttpRequest request = context.Request;
        bool hasLength = request.ContentLength is not null || request.Headers.ContainsKey("X-Content-Length");
        if (request.Headers.TransferEncoding.Count > 0 && hasLength)
        {
            await Refusal.WriteAsync(
                context,
                StatusCodes.Status400BadRequest,
                "request",
                "The request states its length in two ways that need not agree. Nothing was stored."
            );
            return;
        }

        IHttpMethodMetadata? methods = context.GetEndpoint()?.Metadata.GetMetadata<IHttpMethodMetadata>();
        bool takesForms = methods is not null && !methods.HttpMethods.Contains(HttpMethods.Get);
        if (!takesForms || await IsReadableAsync(context))
        {
            await next(context);
        }
    }

    private static async Task<bool> IsReadableAsync(HttpContext context)
    {
        HttpRequest request = context.Request;
        if (request.Path.StartsWithSegments("/api", StringComparison.Ordinal))
        {
            return true; // read and answered as JSON by its own route
        }

        if (!request.HasFormContentType)
        {
            await Refusal.WriteAsync(
                context,
                StatusCodes.Status415UnsupportedMediaType,
                "request",
                "This address takes a form. Nothing was stored.",
                "application/x-www-form-urlencoded or multipart/form-data"
            );
            return false;
        }

        try
        {
            IFormCollection form = await request.ReadFormAsync(context.RequestAborted);
            if (form.Any(field => HasNothingCharacter(field.Key) || field.Value.Any(HasNothingCharacter)))
            {
                await Refusal.WriteAsync(
                    context,
                    StatusCodes.Status400BadRequest,
                    "request",
                    "A field holds a character that cannot be written (code 0). Nothing was stored.",
                    "letters, digits and signs"
                );
                return false;
            }

            IEnumerable<(string, string?)> fields = form.SelectMany(field => field.Value.Select(value => (field.Key, value)));
            if (TextLimit.Check(fields).FirstOrDefault() is { } problem)
            {
                string said = char.ToUpperInvariant(problem.Message[0]) + problem.Message[1..];
                await Refusal.WriteAsync(
                    context,
                    StatusCodes.Status422UnprocessableEntity,
                    problem.Field,
                    $"{said}. Nothing was stored; what you typed is still in the form: go back to it.",
                    problem.Allowed
                );
                return false;
            }

            return true;
        }
        catch (InvalidDataException wrong) when (!wrong.Message.Contains("limit", StringComparison.OrdinalIgnoreCase))
        {
            await Refusal.WriteAsync(
                context,
                StatusCodes.Status400BadRequest,
                "request",
                "The form cannot be read. Nothing was stored.",
                "letters, digits and signs, none of code 0"
            );
            return false;
        }
        catch (InvalidDataException)
        {
            await Refusal.WriteAsync(
                context,
                StatusCodes.Status413PayloadTooLarge,
                "request",
                "The form is larger than any page of this shop sends. Nothing was stored.",
                Largest
            );
            return false;
        }
    }

    private static string Largest =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{FormLimits.MostFields} fields, names of {FormLimits.LongestName} letters, 4 MB in all"
        );

    private static bool HasNothingCharacter(string? text) => text?.Contains('\0', StringComparison.Ordinal) ?? false;
}
