using System;

namespace Refrigerant.Recovery.Records;

/// <summary>A document cannot be read: it is no JSON, or a member of it is missing, unknown, of the wrong type or out of range.</summary>
public sealed class DocumentException : FormatException
{
    internal DocumentException(string path, string message, Exception? inner = null)
        : base(message, inner) => Path = path;

    /// <summary>Where in the document, such as "$.appliance.chargeKilograms"; "$" is the whole document.</summary>
    public string Path { get; }
}
