using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Records;

/// <summary>A document cannot be read: it is no JSON, or a member of it is missing, unknown, of the wrong type or out of range.</summary>
public sealed class DocumentException : FormatException
{
    internal DocumentException(string path, string message, Exception? inner = null)
        : base(message, inner)
    {
        Path = path;
        Errors = new ValueList<DocumentError>([new DocumentError(path, message)]);
    }

    internal DocumentException(IReadOnlyList<DocumentError> errors)
        : base(errors[0].Message)
    {
        Path = errors[0].Path;
        Errors = errors;
    }

    /// <summary>Where in the document the first error is, such as "$.appliance.chargeKilograms"; "$" is the whole document.</summary>
    public string Path { get; }

    /// <summary>Everything that is wrong, in the order of the document; one or more.</summary>
    public IReadOnlyList<DocumentError> Errors { get; }
}
