using System;
using System.Collections.Generic;

namespace Refrigerant.Recovery.Records;

/// <summary>What a kind of document knows of its parts beyond their shape, so that everything that is wrong can be told at once.</summary>
internal class DocumentParts
{
    /// <summary>Makes a part, so that what is wrong with it is thrown; nothing to make by default.</summary>
    public virtual void Make(object part, DocumentNode node)
    {
    }

    /// <summary>Checks a text by itself, whatever is around it; nothing to check by default.</summary>
    public virtual void CheckText(Type owner, string member, string text, DocumentNode place)
    {
    }

    /// <summary>What contradicts itself in the members of a part, whatever else is wrong with them: the place and the reason; nothing by default.</summary>
    public virtual IEnumerable<(DocumentNode Place, string Reason)> Contradictions(Type owner, DocumentNode node) => [];

    /// <summary>Adds to the members of a part that are wrong those that say nothing without them, and names what stands in for them while the rest is looked at.</summary>
    /// <param name="owner">The type of the part.</param>
    /// <param name="wrong">The members that are wrong, and left out.</param>
    /// <param name="standIns">What is put in their place, as JSON.</param>
    public virtual void Mend(Type owner, HashSet<string> wrong, Dictionary<string, string> standIns)
    {
    }
}
