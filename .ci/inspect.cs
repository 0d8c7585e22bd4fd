// Looks into a packed package and its symbols: assembly version, strong name, documentation of public types only, sources of every file.
// Usage: dotnet run inspect.cs -- PACKAGE.nupkg [https://address-that-sources-must-come-from]
using System;
using System.Collections.Generic;
using System.IO;
using System.IO.Compression;
using System.Linq;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Text.Json;
using System.Xml.Linq;

Guid sourceLink = new("CC110556-A091-4D38-9FEC-25AB9A351A6A");
Guid embeddedSource = new("0E8A571B-6926-466E-B4AD-8AB04611F5FE");
string package = args[0];
string? address = args.Length > 1 ? args[1] : null;
using ZipArchive files = ZipFile.OpenRead(package);
using ZipArchive symbols = ZipFile.OpenRead(Path.ChangeExtension(package, ".snupkg"));
int faults = 0;
foreach (ZipArchiveEntry entry in files.Entries.Where(e => e.FullName.StartsWith("lib/") && e.Name.EndsWith(".dll")))
{
    using var image = new PEReader(Copy(entry));
    MetadataReader metadata = image.GetMetadataReader();
    AssemblyDefinition assembly = metadata.GetAssemblyDefinition();
    string version = assembly.GetCustomAttributes().Select(metadata.GetCustomAttribute).Select(a => Text(metadata, a)).First(t => t.Name == "AssemblyInformationalVersionAttribute").Value;
    Expect(assembly.Version == new Version(int.Parse(version.Split('.')[0]), 0, 0, 0), $"{entry.FullName}: assembly version {assembly.Version} of {version}, not its major");
    bool isSigned = !assembly.PublicKey.IsNil;
    bool mayBeSigned = metadata.AssemblyReferences.Select(metadata.GetAssemblyReference).All(r => !r.PublicKeyOrToken.IsNil);
    Expect(isSigned == mayBeSigned, $"{entry.FullName}: strong name {isSigned}, while all references having one is {mayBeSigned}");

    HashSet<string> types = [.. metadata.TypeDefinitions.Where(t => IsPublic(metadata, t)).Select(t => FullName(metadata, t))];
    string[] documented = [.. XDocument.Load(new MemoryStream(Bytes(files.GetEntry(Path.ChangeExtension(entry.FullName, ".xml"))!))).Descendants("member").Select(m => (string)m.Attribute("name")!)];
    foreach (string id in documented)
    {
        string name = id[2..].Split('(')[0];
        string type = id[0] == 'T' ? name : name[..name.Replace(".#", "+#").LastIndexOfAny(['.', '+'])];
        Expect(types.Contains(type), $"{entry.FullName}: the documentation names {id}, which is not public");
    }

    string[] undocumented = [.. types.Where(t => !documented.Contains("T:" + t))];
    Expect(undocumented.Length == 0, $"{entry.FullName}: no documentation of {string.Join(", ", undocumented)}");

    using MetadataReaderProvider pdb = MetadataReaderProvider.FromPortablePdbStream(Copy(symbols.GetEntry(Path.ChangeExtension(entry.FullName, ".pdb"))!));
    MetadataReader debug = pdb.GetMetadataReader();
    string[] maps = [.. Information(debug, System.Reflection.Metadata.Ecma335.MetadataTokens.EntityHandle(1), sourceLink).SelectMany(b => JsonDocument.Parse(b).RootElement.GetProperty("documents").EnumerateObject().Select(p => $"{p.Name}\n{p.Value.GetString()}"))];
    int linked = 0, embedded = 0;
    foreach (DocumentHandle handle in debug.Documents)
    {
        string path = debug.GetString(debug.GetDocument(handle).Name);
        bool isEmbedded = Information(debug, handle, embeddedSource).Any();
        bool isLinked = maps.Any(m => m.Split('\n') is [var from, var to] && path.StartsWith(from.TrimEnd('*'), StringComparison.Ordinal) && (address is null || to.StartsWith(address, StringComparison.Ordinal)));
        linked += isLinked ? 1 : 0;
        embedded += isEmbedded ? 1 : 0;
        Expect(isLinked || isEmbedded, $"{entry.FullName}: a debugger finds no source of {path}");
    }

    Expect(address is null || linked > debug.Documents.Count / 2, $"{entry.FullName}: only {linked} of {debug.Documents.Count} files come from {address}");
    Console.WriteLine($"{entry.FullName}: {assembly.Version}, strong name {isSigned}, {types.Count} public types documented, sources of {debug.Documents.Count} files: {linked} by link, {embedded} in the symbols");
}

return faults == 0 ? 0 : 1;

void Expect(bool condition, string fault)
{
    if (!condition)
    {
        Console.Error.WriteLine(fault);
        faults++;
    }
}

static byte[] Bytes(ZipArchiveEntry entry) => ((MemoryStream)Copy(entry)).ToArray();

static Stream Copy(ZipArchiveEntry entry)
{
    var copy = new MemoryStream();
    using Stream stream = entry.Open();
    stream.CopyTo(copy);
    copy.Position = 0;
    return copy;
}

static IEnumerable<byte[]> Information(MetadataReader reader, EntityHandle parent, Guid kind) =>
    reader.GetCustomDebugInformation(parent).Select(reader.GetCustomDebugInformation).Where(i => reader.GetGuid(i.Kind) == kind).Select(i => reader.GetBlobBytes(i.Value));

static bool IsPublic(MetadataReader reader, TypeDefinitionHandle handle)
{
    TypeDefinition type = reader.GetTypeDefinition(handle);
    System.Reflection.TypeAttributes visibility = type.Attributes & System.Reflection.TypeAttributes.VisibilityMask;
    return visibility == System.Reflection.TypeAttributes.Public
        || (visibility == System.Reflection.TypeAttributes.NestedPublic && IsPublic(reader, type.GetDeclaringType()));
}

static string FullName(MetadataReader reader, TypeDefinitionHandle handle)
{
    TypeDefinition type = reader.GetTypeDefinition(handle);
    string name = reader.GetString(type.Name);
    return type.GetDeclaringType().IsNil ? $"{reader.GetString(type.Namespace)}.{name}" : $"{FullName(reader, type.GetDeclaringType())}.{name}";
}

static (string Name, string Value) Text(MetadataReader reader, CustomAttribute attribute)
{
    if (attribute.Constructor.Kind != HandleKind.MemberReference)
    {
        return (string.Empty, string.Empty);
    }

    EntityHandle parent = reader.GetMemberReference((MemberReferenceHandle)attribute.Constructor).Parent;
    string name = parent.Kind == HandleKind.TypeReference ? reader.GetString(reader.GetTypeReference((TypeReferenceHandle)parent).Name) : string.Empty;
    if (name != "AssemblyInformationalVersionAttribute")
    {
        return (name, string.Empty);
    }

    BlobReader value = reader.GetBlobReader(attribute.Value);
    value.ReadUInt16();
    return (name, value.ReadSerializedString() ?? string.Empty);
}
