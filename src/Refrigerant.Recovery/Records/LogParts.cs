namespace Refrigerant.Recovery.Records;

/// <summary>The parts of a log: the order of its readings is looked at once each of them is right by itself.</summary>
internal sealed class LogParts : DocumentParts
{
    public override void Make(object part, DocumentNode node) => _ = (part as LogDocument)?.ToLog(node);
}
