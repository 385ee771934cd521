using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization.Metadata;
using Coilwright.Web.Hosting.Access;
using Coilwright.Workshop.Entry;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Json;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;

namespace Coilwright.Web.Endpoints;

/// <summary>Reads the body of a request to the API; every problem of one that cannot be read is listed at once.</summary>
internal static class ApiBody
{
    private const string Field = "body";

    /// <summary>A body as a value, or the answer that refuses it.</summary>
    /// <param name="request">The request.</param>
    /// <param name="cancel">Gives up.</param>
    /// <param name="inPath">A field that stands in the address and is not asked for again.</param>
    public static async Task<(T? Value, IResult? Refused)> ReadAsync<T>(
        HttpRequest request,
        CancellationToken cancel,
        (string Name, Guid Id)? inPath = null
    )
        where T : class
    {
        if (!request.HasJsonContentType())
        {
            Problem notJson = new(Field, "this address takes JSON", request.ContentType, "application/json");
            return (null, Refuse(StatusCodes.Status415UnsupportedMediaType, [notJson]));
        }

        JsonNode? body;
        try
        {
            JsonNodeOptions anyCase = new() { PropertyNameCaseInsensitive = true };
            body = await JsonNode.ParseAsync(request.Body, anyCase, cancellationToken: cancel);
        }
        catch (Exception wrong) when (wrong is JsonException or ArgumentException)
        {
            Problem unreadable = new(Field, "this is not JSON: " + Place(wrong), null, "a JSON object");
            return (null, Refuse(StatusCodes.Status400BadRequest, [unreadable]));
        }

        JsonSerializerOptions options = Strict(request);
        List<Problem> problems = [];
        T? value = null;
        if (body is JsonObject fields)
        {
            Place(fields, inPath, problems);
            PutPerson(fields, request.HttpContext, options.GetTypeInfo(typeof(T)));
            problems.AddRange(ProblemsOf(fields, options.GetTypeInfo(typeof(T)), options));
            value = problems.Count == 0 ? fields.Deserialize<T>(options) : null;
        }
        else
        {
            string names = string.Join(", ", options.GetTypeInfo(typeof(T)).Properties.Select(one => one.Name));
            problems.Add(new Problem(Field, "a JSON object is needed", null, names));
        }

        return value is null ? (null, Refuse(StatusCodes.Status400BadRequest, problems)) : (value, null);
    }

    /// <summary>The problems of a body, as every other list of problems.</summary>
    private static IResult Refuse(int status, IReadOnlyList<Problem> problems) => Results.Json(new { problems }, statusCode: status);

    private static JsonSerializerOptions Strict(HttpRequest request) =>
        new(request.HttpContext.RequestServices.GetRequiredService<IOptions<JsonOptions>>().Value.SerializerOptions)
        {
            RespectNullableAnnotations = true,
            RespectRequiredConstructorParameters = true,
        };

    private static string Place(Exception wrong) =>
        wrong is JsonException { LineNumber: { } line, BytePositionInLine: { } place }
            ? $"line {line + 1}, place {place + 1}"
            : "a field stands in it twice";

    /// <summary>Who did it is the account that is signed in, whatever the body says.</summary>
    private static void PutPerson(JsonObject fields, HttpContext context, JsonTypeInfo type)
    {
        const string Person = "person";
        if (context.SignedIn() is { } who && type.Properties.Any(known => Same(known.Name, Person)))
        {
            fields[Person] = who.Name;
        }
    }

    /// <summary>Puts the id of the address into the body; one that says another is a problem.</summary>
    private static void Place(JsonObject fields, (string Name, Guid Id)? inPath, List<Problem> problems)
    {
        if (inPath is not { } known)
        {
            return;
        }

        if (fields[known.Name] is { } said && !Same(said.ToString(), known.Id.ToString()))
        {
            problems.Add(
                new Problem(known.Name, "the address names another one; leave it out of the body", said.ToString(), known.Id.ToString())
            );
        }

        fields[known.Name] = known.Id;
    }

    private static IEnumerable<Problem> ProblemsOf(JsonObject fields, JsonTypeInfo type, JsonSerializerOptions options)
    {
        foreach ((string name, _) in fields.Where(field => !type.Properties.Any(known => Same(known.Name, field.Key))))
        {
            yield return new Problem(name, "there is no such field", null, string.Join(", ", type.Properties.Select(known => known.Name)));
        }

        foreach (JsonPropertyInfo property in type.Properties)
        {
            bool isThere = fields.TryGetPropertyValue(property.Name, out JsonNode? value);
            if (!isThere && (property.IsRequired || property.AssociatedParameter is { IsMemberInitializer: false, HasDefaultValue: false }))
            {
                yield return new Problem(property.Name, "this field is missing", null, Needed(property.PropertyType));
            }
            else if (isThere && ProblemOf(property, value, options) is { } problem)
            {
                yield return problem;
            }
        }
    }

    private static Problem? ProblemOf(JsonPropertyInfo property, JsonNode? value, JsonSerializerOptions options)
    {
        bool mayBeNull =
            property.PropertyType == typeof(JsonElement)
            || Nullable.GetUnderlyingType(property.PropertyType) is not null
            || (!property.PropertyType.IsValueType && property.IsSetNullable);
        if (value is null)
        {
            return mayBeNull ? null : new Problem(property.Name, "this field is empty (null)", null, Needed(property.PropertyType));
        }

        try
        {
            string? text = value.Deserialize(property.PropertyType, options) as string;
            return text?.Contains('\0', StringComparison.Ordinal) ?? false
                ? new Problem(property.Name, "this holds a character that cannot be written (code 0)", null, "letters, digits and signs")
                : TextLimit.Check([(property.Name, text)]).FirstOrDefault();
        }
        catch (JsonException)
        {
            return new Problem(property.Name, "this cannot be read", Shown(value), Needed(property.PropertyType));
        }
    }

    private static string Shown(JsonNode value)
    {
        const int Most = 60;
        string text = value.ToJsonString();
        return text.Length <= Most ? text : text[..Most] + "…";
    }

    private static string Needed(Type type) =>
        (Nullable.GetUnderlyingType(type) ?? type) switch
        {
            var text when text == typeof(string) => "a text in quotation marks",
            var id when id == typeof(Guid) => "an id of 32 hexadecimal digits, for example 0b1f6a52-3c7d-4c39-9d0e-5a2c8e7f4b11",
            var flag when flag == typeof(bool) => "true or false",
            var document when document == typeof(JsonElement) => "a document, as in its file",
            { IsEnum: true } word => string.Join(", ", Enum.GetNames(word).Select(JsonNamingPolicy.CamelCase.ConvertName)),
            { IsPrimitive: true } => "a number",
            _ => "a list",
        };

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
