using System;

namespace Refrigerant.Recovery.Records;

/// <summary>The way to a place of a document, which is made a text only where it is told.</summary>
internal sealed class DocumentPath
{
    private readonly DocumentPath? _parent;
    private readonly string _name;
    private readonly int _index;

    public DocumentPath(string root)
        : this(null, root, -1)
    {
    }

    private DocumentPath(DocumentPath? parent, string name, int index)
    {
        _parent = parent;
        _name = name;
        _index = index;
    }

    public DocumentPath Member(string name) => new(this, name, -1);

    public DocumentPath Item(int index) => new(this, string.Empty, index);

    public override string ToString() => _parent is null ? _name
        : _index < 0 ? _parent + "." + _name
        : FormattableString.Invariant($"{_parent}[{_index}]");
}
