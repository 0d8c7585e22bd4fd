using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using Refrigerant.Recovery.Findings;
using Xunit;

namespace Refrigerant.Recovery.Tests.Findings;

/// <summary>Every code that the library raises is in the register, and the register has none that it does not raise.</summary>
public class FindingCodeTests
{
    private const BindingFlags Everything =
        BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly FieldInfo[] Fields = typeof(Finding).Assembly.GetTypes()
        .SelectMany(type => type.GetFields(Everything))
        .Where(field => field.IsStatic && field.FieldType == typeof(FindingCode))
        .ToArray();

    [Fact]
    public void EveryCodeIsRegisteredOnce()
    {
        Assert.Equal(
            Fields.Select(field => ((FindingCode)field.GetValue(null)!).Id).Order(StringComparer.Ordinal),
            FindingCodes.All.Select(code => code.Id).Order(StringComparer.Ordinal));
        Assert.Equal(FindingCodes.All.Count, FindingCodes.All.Select(code => code.Id).Distinct().Count());
        Assert.All(FindingCodes.All, code => Assert.Same(code, FindingCodes.Find(code.Id)));
        Assert.All(FindingCodes.All, code => Assert.False(code.Trigger.Length == 0 || code.Trigger.EndsWith('.'), code.Id));
        Assert.Null(FindingCodes.Find("no-such-code"));
        Assert.Null(FindingCodes.Find("other"));
    }

    /// <summary>Codes are made in static fields only, so that what is raised is what is registered.</summary>
    [Fact]
    public void CodesAreMadeInFieldsOnly()
    {
        ConstructorInfo constructor = typeof(FindingCode).GetConstructors().Single();
        Assert.Empty(Methods().Where(method => method is not ConstructorInfo { IsStatic: true }).Where(method => Tokens(method, 0x73).Contains(constructor)).Select(Name));
    }

    /// <summary>No finding is made without a code, but as a copy of another.</summary>
    [Fact]
    public void EveryFindingHasACode() => Assert.All(
        typeof(Finding).GetConstructors(Everything).Where(made => made.GetParameters()[0].ParameterType != typeof(Finding)),
        made => Assert.Equal(typeof(FindingCode), made.GetParameters()[0].ParameterType));

    [Fact]
    public void EveryRegisteredCodeIsRaised()
    {
        HashSet<MemberInfo> used = [.. Methods().Where(method => method is not ConstructorInfo { IsStatic: true }).SelectMany(method => Tokens(method, 0x7E))];
        Assert.Empty(Fields.Where(field => !used.Contains(field)).Select(field => field.DeclaringType!.Name + "." + field.Name));
    }

    private static string Name(MethodBase method) => method.DeclaringType!.Name + "." + method.Name;

    private static IEnumerable<MethodBase> Methods() => typeof(Finding).Assembly.GetTypes()
        .SelectMany(type => type.GetMethods(Everything).Concat<MethodBase>(type.GetConstructors(Everything)));

    /// <summary>What follows an opcode in a method's body and is a member: newobj 73, ldsfld 7E.</summary>
    private static IEnumerable<MemberInfo> Tokens(MethodBase method, byte opcode)
    {
        byte[] il = method.GetMethodBody()?.GetILAsByteArray() ?? [];
        for (int i = 0; i + 4 < il.Length; i++)
        {
            if (il[i] == opcode && Resolve(method, BitConverter.ToInt32(il, i + 1)) is MemberInfo member)
            {
                yield return member;
            }
        }
    }

    private static MemberInfo? Resolve(MethodBase method, int token)
    {
        try
        {
            return method.Module.ResolveMember(
                token,
                method.DeclaringType?.IsGenericType == true ? method.DeclaringType.GetGenericArguments() : null,
                method.IsGenericMethod ? method.GetGenericArguments() : null);
        }
        catch (Exception e) when (e is ArgumentException or BadImageFormatException)
        {
            return null;
        }
    }
}
