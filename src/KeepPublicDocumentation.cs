// The body of a build task (Directory.Build.targets): removes from a documentation file what the files of the public surface do not list.
var names = new System.Collections.Generic.HashSet<string>();
foreach (var file in PublicApi)
{
    foreach (var line in System.IO.File.ReadAllLines(file.ItemSpec))
    {
        if (line.Length == 0 || line[0] == '#')
        {
            continue;
        }

        // "static Name.Space.Type.Member(int x) -> string!": the name is the last word before the parameters.
        var head = System.Text.RegularExpressions.Regex.Split(line, @"\(| -> | = ")[0];
        var name = System.Text.RegularExpressions.Regex.Replace(head.Substring(head.LastIndexOf(' ') + 1), "<[^>]*>", string.Empty);
        names.Add(name);
        names.Add(System.Text.RegularExpressions.Regex.Replace(name, @"\.(get|set|init)$", string.Empty));
    }
}

var documentation = System.Xml.Linq.XDocument.Load(DocumentationFile, System.Xml.Linq.LoadOptions.PreserveWhitespace);
var removed = 0;
foreach (var member in new System.Collections.Generic.List<System.Xml.Linq.XElement>(documentation.Descendants("member")))
{
    var id = ((string)member.Attribute("name")).Substring(2);
    var name = System.Text.RegularExpressions.Regex.Replace(id.Split('(')[0], "`+[0-9]+", string.Empty);
    if (name.EndsWith(".#ctor"))
    {
        var type = name.Substring(0, name.Length - ".#ctor".Length);
        name = type + type.Substring(type.LastIndexOf('.'));
    }

    var isOperator = name.IndexOf(".op_") > 0 && names.Contains(name.Substring(0, name.IndexOf(".op_")));
    if (!names.Contains(name) && !isOperator)
    {
        // The white space before it goes too.
        var before = member.PreviousNode as System.Xml.Linq.XText;
        if (before != null && string.IsNullOrWhiteSpace(before.Value))
        {
            before.Remove();
        }

        member.Remove();
        removed++;
    }
}

if (removed > 0)
{
    // The whole stays beside the compiler's output, for the descriptions in the schemas.
    System.IO.File.Copy(DocumentationFile, System.IO.Path.ChangeExtension(DocumentationFile, ".all.xml"), true);
    using (var writer = new System.IO.StreamWriter(DocumentationFile, false, new System.Text.UTF8Encoding(false)))
    {
        documentation.Save(writer, System.Xml.Linq.SaveOptions.DisableFormatting);
    }
}
