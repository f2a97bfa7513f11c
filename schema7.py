import json,os,re
os.chdir(os.environ['D'])
def rd(p): return open(p).read()
def wr(p,s): open(p,'w').write(s)
def rep(s,a,b):
    assert a in s, a
    return s.replace(a,b)
def load(p):
    s=rd(p); d=json.loads(s)
    assert json.dumps(d,indent=2,ensure_ascii=False)+"\n"==s, p
    return d
def save(p,d): wr(p,json.dumps(d,indent=2,ensure_ascii=False)+"\n")
PROGRAM={"description":"that gave this answer","type":"object","properties":{"name":{"const":"bulbwright"},"version":{"type":"string","minLength":1}},"required":["name","version"]}
def with_head(d,request,required=("program","request"),extra=None):
    props={}
    for k,v in d["properties"].items():
        props[k]=v
        if k=="schema":
            props["program"]=PROGRAM; props["request"]=request
            if extra: props.update(extra)
    d["properties"]=props
    i=d["required"].index("schema")+1
    d["required"][i:i]=list(required)+(list(extra) if extra else [])
# plan
p='docs/schema/plan.schema.json'; d=load(p)
with_head(d,{"description":"what was asked: the pot file (pot.schema.json) that file and flags amount to","type":"object"})
d["description"]="Answer of `bulbwright plan --format json`, the same object whether the plan can be carried out or not. docs/json.md says what is promised of it: keys are never taken away or given another meaning within version 1; new ones may be added. A value that is not known is an absent key; null says that there is nothing to measure."
target=d["properties"]["place"]
d["properties"]={("climate" if k=="place" else k):v for k,v in d["properties"].items()}
d["required"]=["climate" if k=="place" else k for k in d["required"]]
target["properties"]={("place" if k=="label" else k):v for k,v in target["properties"].items()}
target["required"]=["place" if k=="label" else k for k in target["required"]]
L=d["$defs"]["layer"]
L["properties"]={("count_given" if k=="own_count" else k):v for k,v in L["properties"].items()}
L["required"]=["count_given" if k=="own_count" else k for k in L["required"]]
L["properties"]["least_gap_mm"]["type"]=["number","null"]
L["properties"]["least_gap_mm"]["description"]="smallest distance between the printed places (mm, to 0.1); null with fewer than two bulbs"
N=d["$defs"]["need"]
N["properties"]["own"]={"description":"of need: bulbs the grower has already","type":"integer","minimum":0}
N["properties"]={("pot_name" if k=="pot" else k):v for k,v in N["properties"].items()}
# nulls of mix_mean_c ?
save(p,d)
p='docs/schema/suggest.schema.json'; d=load(p)
words={"type":"array","items":{"type":"string"}}
wish={"description":"which stacks were wanted","type":"object","required":["window","layers","no_storage","safe_for","not_eaten_by","with","without","best"],
 "properties":{"window":{"$ref":"#/$defs/days"},"layers":{"description":"at most","type":"integer","minimum":1},"no_storage":{"type":"boolean"},"safe_for":words,"not_eaten_by":words,"with":words,"without":words,"best":{"description":"how many","type":"integer","minimum":1}}}
with_head(d,{"description":"pot, place and dates asked for, as a pot file (pot.schema.json) without layers","type":"object"},extra={"wish":wish})
S=d["$defs"]["suggestion"]
S["properties"]={("longest_run" if k=="stretch" else k):v for k,v in S["properties"].items()}
S["required"]=["longest_run" if k=="stretch" else k for k in S["required"]]
save(p,d)
# text edits
HEAD='''    "program": {
      "type": "object",
      "required": ["name", "version"],
      "properties": { "name": { "const": "bulbwright" }, "version": { "type": "string", "minLength": 1 } }
    },
'''
p='docs/schema/cold.schema.json'; s=rd(p)
s=rep(s,'"required": ["schema", "place", "basis"','"required": ["schema", "program", "request", "place", "basis"')
s=rep(s,'    "schema": { "const": "bulbwright.cold/1" },\n','    "schema": { "const": "bulbwright.cold/1" },\n'+HEAD+'    "request": { "type": "object", "description": "the pot file (pot.schema.json) that file and flags amount to; pot and layers may be missing. The days asked for are from and to." },\n')
s=rep(s,'''      "required": ["name", "litres", "exposure", "lag_hours", "daily_swing_left"],
      "properties": {
        "name": { "type": "string" },
        "litres": { "type": "number", "exclusiveMinimum": 0 },''','''      "required": ["material", "filled_litres", "exposure", "lag_hours", "daily_swing_left"],
      "properties": {
        "name": { "type": "string" },
        "material": { "type": "string" },
        "filled_litres": { "type": "number", "exclusiveMinimum": 0, "description": "up to the mix surface" },''')
wr(p,s)
p='docs/schema/shop.schema.json'; s=rd(p)
s=rep(s,'"required": ["schema", "sure", "pots", "items"]','"required": ["schema", "program", "request", "sure", "pots", "items"]')
s=rep(s,'    "schema": { "const": "bulbwright.shop/1" },\n','    "schema": { "const": "bulbwright.shop/1" },\n'+HEAD+'    "request": { "type": "array", "items": { "type": "object" }, "description": "a pot file (pot.schema.json) for each of pots" },\n')
s=rep(s,'"required": ["ok", "layers", "mix_litres", "perlite_litres",','"required": ["number", "ok", "layers", "mix_loose_litres", "perlite_litres",')
s=rep(s,'''      "properties": {
        "name": { "type": "string" },
        "file"''','''      "properties": {
        "number": { "type": "integer", "minimum": 1, "description": "in this list, 1 first" },
        "name": { "type": "string" },
        "file"''')
s=rep(s,'''              "count": { "type": "integer", "minimum": 0 },
              "own": { "type": "boolean" }''','''              "count": { "type": "integer", "minimum": 0 },
              "own": { "type": "integer", "minimum": 0, "description": "of count: bulbs the grower has" }''')
s=rep(s,'''        "mix_litres": { "type": "number", "minimum": 0 },
        "perlite_litres": { "type": "number", "minimum": 0 },''','''        "mix_loose_litres": { "type": "number", "minimum": 0, "description": "to buy, before settling, perlite included" },
        "perlite_litres": { "type": "number", "minimum": 0, "description": "of mix_loose_litres" },''')
s=rep(s,'"opening_mm": { "type": "number" }','"mesh_opening_mm": { "type": "number" }')
s=rep(s,'"required": ["pot", "need"]','"required": ["pot_number", "need"]')
s=rep(s,'"pot": { "type": "integer", "minimum": 0, "description": "index into pots" }','"pot_number": { "type": "integer", "minimum": 1, "description": "number of one of pots" }')
s=rep(s,'''              "need": { "type": "number", "minimum": 0 },
              "own": { "type": "boolean" }''','''              "need": { "type": "number", "minimum": 0 },
              "own": { "type": "integer", "minimum": 0, "description": "of need; bulbs only" }''')
s=rep(s,'"description": "Nothing is bought for a pot with ok false."','"description": "A pot with ok false takes nothing: its amounts are 0."')
wr(p,s)
p='docs/schema/fit.schema.json'; s=rd(p)
s=rep(s,'"required": ["schema", "section",','"required": ["schema", "program", "request", "section",')
s=rep(s,'    "schema": { "const": "bulbwright.fit/1" },\n','    "schema": { "const": "bulbwright.fit/1" },\n'+HEAD+'    "request": { "type": "object", "additionalProperties": { "type": "string" }, "description": "the flags as they were written, those left out at their default" },\n')
s=rep(s,'''  "type": "object",
  "required": ["schema", "program", "request", "section", "bulb_mm", "gap_mm", "wall_mm", "count", "upper_bound", "bound", "positions",
               "least_gap_mm", "least_wall_mm"],
  "additionalProperties": false,''','''  "description": "New keys may appear (docs/json.md).",
  "type": "object",
  "required": ["schema", "program", "request", "section", "bulb_mm", "gap_mm", "wall_mm", "count", "upper_bound", "bound", "positions",
               "least_gap_mm", "least_wall_mm"],''')
wr(p,s)
p='docs/schema/places.schema.json'; s=rd(p)
s=rep(s,'"required": ["schema", "places"]','"required": ["schema", "program", "request", "places"]')
s=rep(s,'    "schema": { "const": "bulbwright.places/1" },\n','    "schema": { "const": "bulbwright.places/1" },\n'+HEAD+'    "request": { "type": "object", "additionalProperties": { "type": "string" }, "description": "the flags as they were written" },\n')
wr(p,s)
p='docs/schema/bulbs.schema.json'; s=rd(p)
s=rep(s,'"required": ["schema", "taxa"]','"required": ["schema", "program", "request", "taxa"]')
s=rep(s,'    "schema": { "const": "bulbwright.bulbs/1" },\n','    "schema": { "const": "bulbwright.bulbs/1" },\n'+HEAD+'    "request": {\n      "type": "object",\n      "required": ["ids"],\n      "properties": { "ids": { "type": "array", "items": { "type": "string" }, "description": "none: all kinds" } }\n    },\n')
s=rep(s,'"required": ["id", "name", "genus", "figures"]','"required": ["taxon", "name", "genus", "figures"]')
s=rep(s,'"id": { "type": "string", "pattern": "^[a-z0-9-]+$" }','"taxon": { "type": "string", "pattern": "^[a-z0-9-]+$" }')
wr(p,s)
