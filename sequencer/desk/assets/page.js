/*! Bundles three.js, fflate, Preact and its signals, all under the MIT licence: see THIRD-PARTY.md. */
"use strict";(()=>{var re,jp,Dh,es,Ph,xl,Qp,_l,tm,Lh,Ih,Iy,Eo=Symbol.for("pv"),bl={},wl=[],Dy=/^m(i|n|o|s|text|space)$/,Nh=Array.isArray,Uh=wl.slice,Ds=Object.assign;function Is(n){n&&n.parentNode&&n.remove()}function em(n,t,e){var i,s,r,o={},a=arguments.length;for(r in t)r=="key"?i=t[r]:r=="ref"&&typeof n!="function"?s=t[r]:o[r]=t[r];return a>2&&(o.children=a>3?Uh.call(arguments,2):e),Ao(n,o,i,s,null)}function Ao(n,t,e,i,s){var r={type:n,props:t,key:e,ref:i,__k:null,__:null,__b:0,__e:null,__c:null,constructor:Eo,__v:s||++jp,__i:-1,__u:0};return!s&&re.vnode&&re.vnode(r),r}function Pt(n){return n.children}function ar(n,t){this.props=n,this.context=t,this.__g=0}function ns(n,t){if(t==null)return n.__&&ns(n.__,n.__i+1);for(var e;t<n.__k.length;t++)if((e=n.__k[t])&&e.__e)return e.__e;return typeof n.type!="function"||n.props.__P?null:ns(n)}function Ly(n){var t,e=n.__v,i=e.__e,s=[],r=[],o=n.__P;o&&((t=Ds({constructor:Eo},e)).__v=e.__v+1,re.vnode&&re.vnode(t),Oh(o,t,e,n.__n,o.namespaceURI,32&e.__u?[i]:null,s,i||ns(e),32&e.__u,r),t.__v=e.__v,t.__.__k[t.__i]=t,am(s,t,r),e.__=e.__e=null,t.__e!=i&&nm(t))}function nm(n){if((n=n.__)&&n.__c&&!n.props.__P)return n.__e=null,n.__k.some(function(t){return t&&(n.__e=t.__e)}),nm(n)}function Jp(n){(8&n.__g||(n.__g|=8,es.push(n),xl++))&&Ph==re.debounceRendering||((Ph=re.debounceRendering)||queueMicrotask)(im)}function im(){try{for(var n,t=1;es.length;)es.length>t&&es.sort(Qp),n=es.shift(),t=es.length,8&n.__g&&Ly(n)}finally{(xl=es.length)&&(Ph||queueMicrotask)(im)}}function sm(n,t,e,i,s,r,o,a,l,u,h){var d,p,f,g,_,v,m=i.__k||wl,y=t.length;for(l=Ny(e,t,m,l,y),d=0;d<y;d++)(f=e.__k[d])!=null&&(p=~f.__i&&m[f.__i]||bl,f.__i=d,v=Oh(n,f,p,s,r,o,a,l,u,h),g=f.__e,(p.ref!=f.ref||8&p.__u)&&(p.ref&&kh(p.ref,null,f,p),f.ref&&h.push(f.ref,f.__c||g,f)),_=_||g,4&f.__u?(l=rm(f,l,n,!p.__v),p.__e&&(p.__e=null)):typeof f.type=="function"&&v!==void 0?l=v:g&&(l=g.nextSibling),f.__u&=-21);return e.__e=_,l}function Ny(n,t,e,i,s){var r,o,a,l,u,h,d,p,f,g=e.length,_=g,v=0,m=0,y=n.__k=Array(s);for(r=0;r<s;r++)(o=t[r])!=null&&typeof o!="boolean"&&typeof o!="function"?(typeof o!="object"||o.constructor===String?o=y[r]=Ao(null,o):Nh(o)?o=y[r]=Ao(Pt,{children:o}):o.constructor===Eo&&o.__b?o=y[r]=Ao(o.type,o.props,o.key,o.ref,o.__v):y[r]=o,l=r+v,o.__=n,o.__b=n.__b+1,a=null,~(u=o.__i=Uy(o,e,l,_))&&(_--,(a=e[u])&&(a.__u|=2)),a&&a.__v?(o.__u|=16,u==l-1?v--:u==l+1?v++:u!=l&&(u>l?v--:v++,m=1)):(~u||(s>g?v--:s<g&&v++),typeof o.type!="function"&&(o.__u|=4))):y[r]=null;if(m){for(h=[],d=[],r=0;r<s;r++)if((o=y[r])&&16&o.__u){for(v=0,p=h.length;v<p;)h[f=v+p>>1]<o.__i?v=f+1:p=f;h[v]=o.__i,d[r]=v+1}for(v=h.length;r--;)d[r]&&(d[r]==v?v--:y[r].__u|=4)}if(_)for(r=0;r<g;r++)!(a=e[r])||2&a.__u||(a.__e==i&&(i=ns(a)),Fh(a,a));return i}function rm(n,t,e,i){var s,r,o,a;if(typeof n.type=="function"){if(n.props.__P)return t;if(s=n.__k)for(r=0;r<s.length;r++)s[r]&&(s[r].__=n,t=rm(s[r],t,e,!1));return t}for(t&&!t.parentNode&&(t=ns(n))&&!t.parentNode&&(t=null),o=n.__e,a=t;a&&a.nodeType==8;)a=a.nextSibling;for(o!=a&&(!i&&e.moveBefore&&o.parentNode?e.moveBefore(o,t):e.insertBefore(o,t||null)),t=o;(t=t&&t.nextSibling)&&t.nodeType==8&&!t.data.startsWith("$s"););return t}function Uy(n,t,e,i){var s,r=n.key,o=n.type,a=t[e],l=a&&!(2&a.__u);if(a===null&&r==null||l&&r==a.key&&o==a.type)return e;if(i>(l?1:0)){for(s=e-1;s>=0;s--)if((a=t[s])&&!(2&a.__u)&&r==a.key&&o==a.type)return s;for(s=e+1;s<t.length;s++)if((a=t[s])&&!(2&a.__u)&&r==a.key&&o==a.type)return s}return-1}function Kp(n,t,e){e==null&&(e=""),t[0]=="-"?n.setProperty(t,e):n[t]=e}function vl(n,t,e,i,s){var r,o;if(t=="style")if(typeof e=="string")n.style.cssText=e;else{if(typeof i=="string"&&(n.style.cssText=i=""),i)for(t in i)e&&t in e||Kp(n.style,t);if(e)for(t in e)i&&e[t]==i[t]||Kp(n.style,t,e[t])}else if(t[0]=="o"&&t[1]=="n")typeof e!="function"&&(e=null),typeof i!="function"&&(i=null),(n.__e||(n.__e={}))[t]=e,e&&i||(o=Ih[t]||(Ih[t]=Oy(t)),(n.__a||(n.__a={}))[t]=Lh,r=t!=(t=t.replace(tm,"$1")),(t=t.slice(2))[0]<"a"&&(t=t.toLowerCase()),e?n.addEventListener(t,o,r):n.removeEventListener(t,o,r));else{if(s=="http://www.w3.org/2000/svg")t=t.replace(/xlink(H|:h)/,"h").replace(/sName$/,"s");else if(t!="width"&&t!="height"&&t!="href"&&t!="list"&&t!="form"&&t!="tabIndex"&&t!="download"&&t!="rowSpan"&&t!="colSpan"&&t!="role"&&t!="popover"&&t in n)try{return void(n[t]=e??"")}catch{}if(typeof e=="function")return;e==null||e===!1&&t[4]!="-"?n.removeAttribute(t):n.setAttribute(t,t=="popover"&&e==1?"":e)}}function Oy(n){return function(t){var e=this.__e;if(e){if(e=e[n],t[_l]==null)t[_l]=Lh++;else if(t[_l]<this.__a[n])return;return e(re.event?re.event(t):t)}}}function Oh(n,t,e,i,s,r,o,a,l,u){var h,d,p,f,g,_,v,m,y,M,b,E,A,x,T,L,R,P,O=t.type;if(t.constructor!==Eo)return null;128&e.__u&&(l=32&e.__u,h=e.__c.__z)&&(t.__u|=l,d=r=[],h.nodeType==8?a=yl(h,r):r.push(h),a=r[0]||a),(h=re.__b)&&h(t);t:if(typeof O=="function"){p=o.length;try{if(m=t.props,y=(h=O.prototype)&&h.render,M=(h=O.contextType)&&i[h.__c],b=h?M?M.props.value:h.__:i,(f=e.__c)?(t.__c=f,2&f.__g&&(f.__g|=1)):(y?t.__c=f=new O(m,b):(t.__c=f=new ar(m,b),f.constructor=O,f.render=Fy),M&&M.sub(f),f.state||(f.state={}),f.__n=i,f.__g|=8,f.__h=[],f.__k=[]),y&&(f.__s||(f.__s=f.state),O.getDerivedStateFromProps&&(f.__s==f.state&&(f.__s=Ds({},f.__s)),Ds(f.__s,O.getDerivedStateFromProps(m,f.__s)))),g=f.props,_=f.state,f.__v=t,e.__c){if(m!==g&&y&&!O.getDerivedStateFromProps&&f.componentWillReceiveProps&&f.componentWillReceiveProps(m,b),t.__v==e.__v&&!(8&f.__g)||!(4&f.__g)&&f.shouldComponentUpdate&&f.shouldComponentUpdate(m,f.__s,b)===!1){t.__v!=e.__v&&(f.props=m,f.state=f.__s,f.__g&=-9),t.__e=e.__e,t.__k=e.__k,t.__k.some(function(B){B&&(B.__=t)}),wl.push.apply(f.__h,f.__k),f.__k=[],f.__h.length&&o.push(f),a=ns(e);break t}f.componentWillUpdate&&f.componentWillUpdate(m,f.__s,b),y&&f.componentDidUpdate&&f.__h.push(function(){f.componentDidUpdate(g,_,v)})}else y&&!O.getDerivedStateFromProps&&f.componentWillMount&&f.componentWillMount(),y&&f.componentDidMount&&f.__h.push(f.componentDidMount);f.context=b,f.props=m,f.__P=n,f.__g&=-5,E=re.__r,A=y?25:0;do f.__g&=-9,E&&E(t),h=f.render(f.props,f.state=f.__s,f.context);while(8&f.__g&&++A<25);y&&(wl.push.apply(f.__h,f.__k),f.__k=[]),f.state=f.__s,f.getChildContext&&(i=Ds({},i,f.getChildContext())),y&&e.__c&&f.getSnapshotBeforeUpdate&&(v=f.getSnapshotBeforeUpdate(g,_)),x=h&&h.type===Pt&&h.key==null?h.props.children:h,m.__P&&(h=a,s=(n=m.__P).namespaceURI,l=r=null,e.props&&e.props.__P!=n&&(e.__k.some(function(B){B&&Fh(B,B)}),e.__k=null),a=e.__k?ns(e,0):null),a=sm(n,Nh(x)?x:[x],t,e,i,s,r,o,a,l,u),m.__P&&(t.__e=null,a=h),t.__u&=-161,d&&d.some(Is),f.__h.length&&o.push(f),1&f.__g&&(f.__g&=-4)}catch(B){if(o.length=p,t.__v=null,l||r)if(B&&B.then){if(t.__u|=128|l,r){for(~(R=r.indexOf(a||void 0))||(R=r.length);(P=r[R-1])&&P.nodeType==8;)R--;for(;R<r.length;R++)if(P=r[R])if(r[R]=null,T){if(P==L)break}else{if(P.nodeType!=8)break;P.data.startsWith("$s")&&(L=yl(T=P))}}if(!T){for(;a&&a.nodeType==8&&a.nextSibling;)a=a.nextSibling;T=a}(h=yl(T=t.__c.__z||(t.__c.__z=T)))?(t.__e=T,a=h):t.__e=a,a=a&&a.nextSibling}else r&&r.some(Is);else t.__e=e.__e;t.__k||(t.__k=e.__k||[]),B&&B.then||om(t),re.__e(B,t,e)}}else a=t.__e=ky(e.__e,t,e,i,s,r,o,l,u,n);return(h=re.diffed)&&h(t),a}function yl(n,t){if(n&&n.nodeType==8&&n.data.startsWith("$s"))for(var e=1;n=n.nextSibling;){if(n.nodeType==8){if(n.data.startsWith("$s"))e++;else if(n.data.startsWith("/$s")&&!--e)return n}t&&t.push(n)}}function om(n){n&&(n.__c&&(n.__c.__g|=4),n.__k&&n.__k.some(om))}function am(n,t,e){for(var i=0;i<e.length;)kh(e[i++],e[i++],e[i++]);re.__c&&re.__c(t,n),n.some(function(s){try{n=s.__h,s.__h=[],n.some(function(r){r.call(s)})}catch(r){re.__e(r,s.__v)}})}function ky(n,t,e,i,s,r,o,a,l,u){var h,d,p,f,g,_,v,m,y=e.props||bl,M=t.props,b=t.type;if(b=="svg"?s="http://www.w3.org/2000/svg":b=="math"?s="http://www.w3.org/1998/Math/MathML":s||(s="http://www.w3.org/1999/xhtml"),r){for(h=0;h<r.length;h++)if((g=r[h])&&(b?g.localName==b:g.nodeType==3)){n=g,r[h]=null;break}}if(!n){if(m=u.ownerDocument||document,!b)return m.createTextNode(M);n=m.createElementNS(s,b,M.is?M:u),a&&(re.__m&&re.__m(t,r),a=!1),r=null}if(b){if(u=b=="template"&&n.content||n,r=b=="textarea"&&M.defaultValue!=null?null:r&&Uh.call(u.childNodes),!a&&r)for(y={},h=0;h<n.attributes.length;h++)y[(g=n.attributes[h]).name]=g.value;for(h in y)g=y[h],h=="dangerouslySetInnerHTML"?p=g:h=="children"||h in M||h=="value"&&"defaultValue"in M||h=="checked"&&"defaultChecked"in M||vl(n,h,null,g,s);for(h in M)g=M[h],h=="children"?f=g:h=="dangerouslySetInnerHTML"?d=g:h=="value"?_=g:h=="checked"?v=g:a&&typeof g!="function"||y[h]===g||vl(n,h,g,y[h],s);d?(a||p&&(d.__html==p.__html||d.__html==n.innerHTML)||(n.innerHTML=d.__html),t.__k=[]):(p&&(n.textContent=""),(b=="foreignObject"||s=="http://www.w3.org/1998/Math/MathML"&&Dy.test(b))&&(s="http://www.w3.org/1999/xhtml"),sm(u,Nh(f)?f:[f],t,e,i,s,r,o,r?r[0]:e.__k&&ns(e,0),a,l),r&&r.some(Is)),a&&b!="textarea"||(h="value",b=="progress"&&_==null?n.removeAttribute(h):_==null||_===n[h]&&(b!="progress"||_)||vl(n,h,_,y[h],s),h="checked",v!=null&&v!=n[h]&&vl(n,h,v,y[h],s))}else y===M||a&&n.data==M||(n.data=M);return n}function kh(n,t,e,i){try{typeof n=="function"?t?t.__x=n(t)||1:i&&(i=i.__c||i.__e)&&(t=i.__x)&&(i.__x=null,typeof t=="function"?t():n(null)):n.current=t}catch(s){re.__e(s,e)}}function Fh(n,t,e){var i,s,r,o;if(re.unmount&&re.unmount(n),!(i=n.ref)||i.current&&i.current!=n.__e||kh(i,null,t,n),i=n.__c){if(i.componentWillUnmount)try{i.componentWillUnmount()}catch(a){re.__e(a,t)}i.__P=i.__n=null}if(i=n.__k)for(o=0;o<i.length;o++)i[o]&&Fh(i[o],t,typeof n.type!="function"||e&&!n.props.__P);!e&&(i=n.__c)&&(i=i.__z)&&(s=yl(i,r=[]))&&(i==n.__e&&r.some(Is),Is(s),Is(i)),e||Is(n.__e),n.__e=n.__c=n.__=null}function Fy(n,t,e){return this.constructor(n,e)}function lm(n,t){var e,i,s,r;re.__&&re.__(n,t),t.nodeType==9&&(t=t.documentElement),i=(e=n&&32&n.__u)?null:t.__k,t.__k=Ao(Pt,{children:[n]}),s=[],r=[],Oh(t,t.__k,i||bl,bl,t.namespaceURI,i?null:t.firstChild?Uh.call(t.childNodes):null,s,i?i.__e:t.firstChild,e,r),am(s,t.__k,r),t.__k.props.children=null}re={__e:function(n,t,e,i){for(var s,r,o;t=t.__;)if((s=t.__c)&&!(1&s.__g)){s.__g|=4;try{if((o=(r=s.constructor)&&r.getDerivedStateFromError)&&s.setState(r.getDerivedStateFromError(n)),s.componentDidCatch&&(s.componentDidCatch(n,i||{}),o=1),o&&8&s.__g)return void(s.__g|=2)}catch(a){n=a}}throw xl=0,n}},jp=0,Dh=function(n){return n!=null&&n.constructor===Eo},ar.prototype.setState=function(n,t){var e=this.__s;e&&e!=this.state||(e=this.__s=Ds({},this.state)),typeof n=="function"&&(n=n(Ds({},e),this.props)),n&&(Ds(e,n),this.__v&&(t&&this.__k.push(t),Jp(this)))},ar.prototype.forceUpdate=function(n){this.__v&&(this.__g|=4,n&&this.__h.push(n),Jp(this))},ar.prototype.render=Pt,es=[],xl=0,Qp=function(n,t){return n.__v.__b-t.__v.__b},_l=Symbol(),tm=/(PointerCapture)$|Capture$/i,Lh=0,Ih={},Iy=0;var Me=class extends Error{constructor(e,i,s,r=!1){super(s);this.status=e;this.trouble=i;this.anyway=r}status;trouble;anyway},In=n=>n.said??n.message,Bh="secret",lr={"X-Sequencer-Secret":""};async function cm(){let n=location.hash.slice(1);if(n&&history.replaceState(null,"",location.pathname),n.startsWith("ticket=")){let t=await fetch("/enter",{method:"POST",headers:{"content-type":"application/json"},body:JSON.stringify({ticket:n.slice(7)})});t.ok&&sessionStorage.setItem(Bh,(await t.json()).secret)}else n&&sessionStorage.setItem(Bh,n);lr["X-Sequencer-Secret"]=sessionStorage.getItem(Bh)||""}async function Co(n){let t=await n.text(),e=null;try{e=JSON.parse(t)}catch{}if(n.ok)return e;let i=e?.error??null,s=i?In(i):`The server answered with ${n.status}.`;throw new Me(n.status,i,s,!!e?.error?.anyway)}async function ie(n){return Co(await fetch(`/api/${n}`,{headers:lr}))}async function ge(n,t){return Co(await fetch(`/api/${n}`,{method:"POST",headers:{...lr,"content-type":"application/json"},body:JSON.stringify(t)}))}async function um(n){return Co(await fetch(`/api/song-file?name=${encodeURIComponent(n.name)}`,{method:"POST",headers:lr,body:n}))}async function hm(n){let t=await fetch(`/api/${n}`,{headers:lr});return t.ok||await Co(t),t.arrayBuffer()}async function dm(n){let t=await fetch("/api/events",{headers:lr});if(!t.ok||!t.body)return Co(t);let e=t.body.pipeThrough(new TextDecoderStream).getReader(),i="";for(;;){let{done:s,value:r}=await e.read();if(s)return;i+=r;let o=i.split(`

`);i=o.pop();for(let a of o){let l="message",u="";for(let h of a.split(`
`))h.startsWith("event:")?l=h.slice(6).trim():h.startsWith("data:")&&(u+=h.slice(5).trim());u&&n(l,JSON.parse(u))}}}var Po,He,zh,fm,Vh=Object.is,Ml=0,wm=[],Gh=[],Fe=re,pm=Fe.__b,mm=Fe.__r,gm=Fe.diffed,vm=Fe.__c,_m=Fe.unmount,ym=Fe.__;function Wh(n,t){Fe.__h&&Fe.__h(He,n,Ml||t),Ml=0;var e=He.__H||(He.__H={__:[],__h:[]});return n>=e.__.length&&e.__.push({}),e.__[n]}function rt(n){return Ml=1,By(Sm,n)}function By(n,t,e){var i=Wh(Po++,2);if(i.t=n,!i.__c&&(i.__=[e?e(t):Sm(void 0,t),function(r){var o=(i.__N||i.__)[0],a=i.t(o,r);Vh(o,a)||(i.__N=[a,i.__[1]],i.__c.setState({}))}],i.__c=He,!He.__f)){He.__f=!0;var s=He.shouldComponentUpdate;He.shouldComponentUpdate=function(r,o,a){var l=this.__H;if(!l)return!0;var u=!1,h=this.props!=r;if(l.__.some(function(p){p.__N&&(u=!0,Vh(p.__[0],p.__N[0])||(h=!0))}),s){var d=s.call(this,r,o,a);return u?d||h:d}return!u||h}}return i.__}function Vt(n,t){var e=Wh(Po++,3);!Fe.__s&&Mm(e.__H,t)&&(e.__P=!0,e.__=n,e.u=t,He.__H.__h.push(e))}function pe(n){return Ml=5,Sl(function(){return{current:n}},[])}function Sl(n,t){var e=Wh(Po++,7);return Mm(e.__H,t)&&(e.__=n(),e.__H=t),e.__}function zy(){var n;do{for(;n=Gh.shift();)try{Ro(n)}catch(e){Fe.__e(e,{__:(n=n.__P)&&n.__v})}for(;n=wm.shift();){var t=n.__H;if(n.__P&&t)try{t.__h.some(Ro),t.__h.some(Hh),t.__h=[]}catch(e){t.__h=[],Fe.__e(e,n.__v)}}}while(Gh.length)}Fe.__b=function(n){He=null,pm&&pm(n)},Fe.__=function(n,t){n&&t.__k&&t.__k.__m&&(n.__m=t.__k.__m),ym&&ym(n,t)},Fe.__r=function(n){mm&&mm(n),Po=0;var t=(He=n.__c).__H;t&&(zh==He?He.__h=[]:(t.__h.some(Ro),t.__h.some(Hh),Po=0),t.__h=[],t.__.some(function(e){e.__N&&(e.__=e.__N),e.u=e.__N=void 0})),zh=He},Fe.diffed=function(n){gm&&gm(n);var t=n.__c;t&&t.__H&&(t.__H.__h.length&&bm(wm.push(t)),t.__H.__.some(function(e){e.u&&(e.__H=e.u)})),zh=He=null},Fe.__c=function(n,t){t.some(function(e){try{e.__h.some(Ro),e.__h=e.__h.filter(function(i){return!i.__||Hh(i)})}catch(i){e.__h=[function(){throw i}]}}),vm&&vm(n,t)},Fe.unmount=function(n){_m&&_m(n);var t,e,i=n.__c;i&&i.__H&&(i.__H.__.some(function(s){try{if(s.__P&&s.__c){if(e===void 0){for(e=n.__;e&&(!e.__c||!e.__c.__P);)e=e.__;e=e&&e.__c}s.__P=e,bm(Gh.push(s))}else Ro(s)}catch(r){t=r}}),i.__H=void 0,t&&Fe.__e(t,i.__v))};var xm=typeof requestAnimationFrame=="function";function Vy(n){var t,e=function(){clearTimeout(i),xm&&cancelAnimationFrame(t),setTimeout(n)},i=setTimeout(e,35);xm&&(t=requestAnimationFrame(e))}function bm(n){n!=1&&fm==Fe.requestAnimationFrame||((fm=Fe.requestAnimationFrame)||Vy)(zy)}function Ro(n){var t=He,e=n.__c;typeof e=="function"&&(n.__c=void 0,e()),He=t}function Hh(n){var t=He;n.__c=n.__(),He=t}function Mm(n,t){return!n||n.length!=t.length||t.some(function(e,i){return!Vh(e,n[i])})}function Sm(n,t){return typeof t=="function"?t(n):t}var Gy=Symbol.for("preact-signals");function Cl(){if(Ri>1)Ri--;else{var n,t=!1;for((function(){var s=Al;for(Al=void 0;s!==void 0;){var r=s.S;if(r.v===s.v)for(var o=r.t;o!==void 0;o=o.x)o.i===s.i&&(o.i=r.i);s=s.o}})();Do!==void 0;){var e=Do;for(Do=void 0,Tl++;e!==void 0;){var i=e.u;if(e.u=void 0,e.f&=-3,!(8&e.f)&&Am(e))try{e.c()}catch(s){t||(n=s,t=!0)}e=i}}if(Tl=0,Ri--,t)throw n}}function Xh(n){if(Ri>0)return n();$h=++Hy,Ri++;try{return n()}finally{Cl()}}var Io,Ee=void 0;function Lo(n){var t=Ee,e=Io;Ee=void 0,Io=void 0;try{return n()}finally{Ee=t,Io=e}}var Do=void 0,Ri=0,Tl=0,Hy=0,$h=0,Al=void 0,El=0;function Tm(n){if(Ee!==void 0){var t=n.n;if(t===void 0||t.t!==Ee)return t={i:0,S:n,p:Ee.s,n:void 0,t:Ee,e:void 0,x:void 0,r:t},Ee.s!==void 0&&(Ee.s.n=t),Ee.s=t,n.n=t,32&Ee.f&&n.S(t),t;if(t.i===-1)return t.i=0,t.n!==void 0&&(t.n.p=t.p,t.p!==void 0&&(t.p.n=t.n),t.p=Ee.s,t.n=void 0,Ee.s.n=t,Ee.s=t),t}}function We(n,t){this.v=n,this.i=0,this.n=void 0,this.t=void 0,this.l=0,this.W=t?.watched,this.Z=t?.unwatched,this.name=t?.name}We.prototype.brand=Gy;We.prototype.h=function(){return!0};We.prototype.S=function(n){var t=this,e=this.t;e!==n&&n.e===void 0&&(n.x=e,this.t=n,e!==void 0?e.e=n:Lo(function(){var i;(i=t.W)==null||i.call(t)}))};We.prototype.U=function(n){var t=this;if(this.t!==void 0){var e=n.e,i=n.x;e!==void 0&&(e.x=i,n.e=void 0),i!==void 0&&(i.e=e,n.x=void 0),n===this.t&&(this.t=i,i===void 0&&Lo(function(){var s;(s=t.Z)==null||s.call(t)}))}};We.prototype.subscribe=function(n){var t=this;return _n(function(){var e=t.value;Lo(function(){return n(e)})},{name:"sub"})};We.prototype.valueOf=function(){return this.value};We.prototype.toString=function(){return this.value+""};We.prototype.toJSON=function(){return this.value};We.prototype.peek=function(){var n=this;return Lo(function(){return n.value})};Object.defineProperty(We.prototype,"value",{get:function(){var n=Tm(this);return n!==void 0&&(n.i=this.i),this.v},set:function(n){if(n!==this.v){if(Tl>100)throw new Error("Cycle detected");(function(e){Ri!==0&&Tl===0&&e.l!==$h&&(e.l=$h,Al={S:e,v:e.v,i:e.i,o:Al})})(this),this.v=n,this.i++,El++,Ri++;try{for(var t=this.t;t!==void 0;t=t.x)t.t.N()}finally{Cl()}}}});function Mt(n,t){return new We(n,t)}function Am(n){for(var t=n.s;t!==void 0;t=t.n)if(t.S.i!==t.i||!t.S.h()||t.S.i!==t.i)return!0;return!1}function Em(n){for(var t=n.s;t!==void 0;t=t.n){var e=t.S.n;if(e!==void 0&&(t.r=e),t.S.n=t,t.i=-1,t.n===void 0){n.s=t;break}}}function Cm(n){for(var t=n.s,e=void 0;t!==void 0;){var i=t.p;t.i===-1?(t.S.U(t),i!==void 0&&(i.n=t.n),t.n!==void 0&&(t.n.p=i)):e=t,t.S.n=t.r,t.r!==void 0&&(t.r=void 0),t=i}n.s=e}function Ls(n,t){We.call(this,void 0,t),this.x=n,this.s=void 0,this.g=El-1,this.f=4}Ls.prototype=new We;Ls.prototype.h=function(){if(this.f&=-3,1&this.f)return!1;if((36&this.f)==32||(this.f&=-5,this.g===El))return!0;if(this.g=El,this.f|=1,this.i>0&&!Am(this))return this.f&=-2,!0;var n=Ee;try{Em(this),Ee=this;var t=this.x();(16&this.f||this.v!==t||this.i===0)&&(this.v=t,this.f&=-17,this.i++)}catch(e){this.v=e,this.f|=16,this.i++}return Ee=n,Cm(this),this.f&=-2,!0};Ls.prototype.S=function(n){if(this.t===void 0){this.f|=36;for(var t=this.s;t!==void 0;t=t.n)t.S.S(t)}We.prototype.S.call(this,n)};Ls.prototype.U=function(n){if(this.t!==void 0&&(We.prototype.U.call(this,n),this.t===void 0)){this.f&=-33;for(var t=this.s;t!==void 0;t=t.n)t.S.U(t)}};Ls.prototype.N=function(){if(!(2&this.f)){this.f|=6;for(var n=this.t;n!==void 0;n=n.x)n.t.N()}};Object.defineProperty(Ls.prototype,"value",{get:function(){if(1&this.f)throw new Error("Cycle detected");var n=Tm(this);if(this.h(),n!==void 0&&(n.i=this.i),16&this.f)throw this.v;return this.v}});function Ne(n,t){return new Ls(n,t)}function Rm(n){var t=n.j;if(n.j=void 0,typeof t=="function"){Ri++;var e=Ee;Ee=void 0;try{t()}catch(i){throw n.f&=-2,n.f|=8,qh(n),i}finally{Ee=e,Cl()}}}function qh(n){for(var t=n.s;t!==void 0;t=t.n)t.S.U(t);n.x=void 0,n.s=void 0,Rm(n)}function Wy(n){if(Ee!==this)throw new Error("Out-of-order effect");Cm(this),Ee=n,this.f&=-2;try{8&this.f&&qh(this)}finally{Cl()}}function cr(n,t){this.x=n,this.j=void 0,this.s=void 0,this.u=void 0,this.f=32,this.name=t?.name,Io&&Io.push(this)}cr.prototype.c=function(){var n=this.S();try{if(8&this.f||this.x===void 0)return;var t=this.x();typeof t=="function"&&(this.j=t)}finally{n()}};cr.prototype.S=function(){if(1&this.f)throw new Error("Cycle detected");this.f|=1,this.f&=-9,Rm(this),Em(this),Ri++;var n=Ee;return Ee=this,Wy.bind(this,n)};cr.prototype.N=function(){2&this.f||(this.f|=2,this.u=Do,Do=this)};cr.prototype.d=function(){this.f|=8,1&this.f||qh(this)};cr.prototype.dispose=function(){this.d()};function _n(n,t){var e=new cr(n,t);try{e.c()}catch(s){throw e.d(),s}var i=e.d.bind(e);return i[Symbol.dispose]=i,i}var Pm,Pl,Rl,$y=typeof window<"u"&&!!window.__PREACT_SIGNALS_DEVTOOLS__;var Im=[];_n(function(){Pm=this.N})();function ur(n,t){re[n]=t.bind(null,re[n]||function(){})}function No(n){if(Rl){var t=Rl;Rl=void 0,t()}Rl=n&&n.S()}function Dm(n){var t=this,e=n.data,i=qy(e);i.name="ReactiveDom",i.value=e;var s=Sl(function(){for(var a=t,l=t.__v;l=l.__;)if(l.__c){l.__c.__$f|=4;break}var u=Ne(function(){var f=i.value.value;return f===0?0:f===!0?"":f||""}),h=Ne(function(){return!Array.isArray(u.value)&&!Dh(u.value)}),d=_n(function(){if(this.N=Lm,h.value){var f=u.value;a.__v&&a.__v.__e&&a.__v.__e.nodeType===3&&(a.__v.__e.data=f)}}),p=t.__$u.d;return t.__$u.d=function(){d(),p.call(this)},[h,u]},[]),r=s[0],o=s[1];return r.value?o.peek():o.value}Dm.displayName="ReactiveTextNode";Object.defineProperties(We.prototype,{constructor:{configurable:!0,value:em(Pt,null).constructor},type:{configurable:!0,value:Dm},props:{configurable:!0,get:function(){var n=this;return{data:{get value(){return n.value}}}}},__b:{configurable:!0,value:1}});ur("__b",function(n,t){if(No(),Pl=void 0,typeof t.type=="string"){var e,i=t.props;for(var s in i)if(s!=="children"){var r=i[s];r instanceof We&&(e||(t.__np=e={}),e[s]=r,i[s]=r.peek())}}n(t)});ur("__r",function(n,t){if(n(t),t.type!==Pt){No();var e,i=t.__c;i&&(i.__$f&=-2,(e=i.__$u)===void 0&&(i.__$u=e=(function(s,r){var o;return _n(function(){o=this},{name:r}),o.c=s,o})((function(s){return function(){var r;$y&&((r=this.y)==null||r.call(this)),s.__$f|=1,s.setState({})}})(i),typeof t.type=="function"?t.type.displayName||t.type.name:""))),Pl=i,No(e)}});ur("__e",function(n,t,e,i){No(),Pl=void 0,n(t,e,i)});ur("diffed",function(n,t){No(),Pl=void 0;var e;if(typeof t.type=="string"&&(e=t.__e)){var i=t.__np,s=t.props,r=e.U;if(r)for(var o in r){var a=r[o];a===void 0||i&&o in i||(a.d(),r[o]=void 0)}if(i){r||(r={},e.U=r);for(var l in i){var u=r[l],h=i[l];u===void 0?(u=Xy(e,l,h,s),r[l]=u):u.o(h,s)}}}n(t)});function Xy(n,t,e,i){var s=t in n&&n.ownerSVGElement===void 0,r=Mt(e);return{o:function(o,a){r.value=o,i=a},d:_n(function(){this.N=Lm;var o=r.value.value;i[t]!==o&&(i[t]=o,s?n[t]=o:o!=null&&(o!==!1||t[4]==="-")?n.setAttribute(t,o):n.removeAttribute(t))})}}ur("unmount",function(n,t){if(typeof t.type=="string"){var e=t.__e;if(e){var i=e.U;if(i){e.U=void 0;for(var s in i){var r=i[s];r&&r.d()}}}var o=t.__np;if(o){var a=t.props;for(var l in o)a[l]=o[l]}t.__np=void 0}else{var u=t.__c;if(u){u.__$f|=8;var h=u.__$u;h&&(u.__$u=void 0,h.d())}}n(t)});ur("__h",function(n,t,e,i){i<3&&(t.__$f|=2),n(t,e,i)});ar.prototype.shouldComponentUpdate=function(n,t){if(this.__R)return!0;var e=this.__$u,i=e&&e.s!==void 0;for(var s in t)return!0;if(this.__f||typeof this.u=="boolean"&&this.u===!0){var r=2&this.__$f;if(!(i||r||4&this.__$f)||1&this.__$f)return!0}else if(!(i||4&this.__$f)||3&this.__$f)return!0;for(var o in n)if(o!=="__source"&&n[o]!==this.props[o])return!0;for(var a in this.props)if(!(a in n))return!0;return!1};function qy(n,t){return Sl(function(){return Mt(n,t)},[])}var Yy=function(n){queueMicrotask(function(){queueMicrotask(n)})};function Zy(){Xh(function(){for(var n;n=Im.shift();)Pm.call(n)})}function Lm(){Im.push(this)===1&&(re.requestAnimationFrame||Yy)(Zy)}function Nm(n,t,e,i){let s=[],r=Math.min(1,n.position(e+1e-6).bar);for(;n.barStart(r)<i-1e-6;){let o=n.barStart(r),l=t.some(h=>Math.abs(h.start_beat-n.barStart(r+1))<.5)?r+1:r+2,u=Jy(t,o+.5);s.push({section:u,heads:u!==null&&u!==s[s.length-1]?.section,start:o,beats:n.barStart(l)-o,bar:r}),r=l}return s}function Jy(n,t){return n.find(e=>t>=e.start_beat&&t<e.end_beat)??null}function Yh(n,t,e){let i=new Map;for(let s of t){let r=(e.get(s)??[]).filter(l=>l.end>n.start+1e-6&&l.start<n.start+n.beats-1e-6),o=r.map(l=>[l.kind,l.title,l.start.toFixed(4),l.end.toFixed(4),l.path?.join("/"),l.entry?.join("/")].join("|")).join(";"),a=i.get(o);a?a.who.push(s):i.set(o,{who:[s],blocks:r})}return[...i.values()]}function Zh(n,t){let e=n.filter(i=>i.start<=t+1e-6&&i.end>t+1e-6);return e.find(i=>i.path!==null&&i.kind!=="link")??e[0]??null}function hn(n,t){return n.length===t.length&&n.length>1?"everybody":n.length>1?`${n.slice(0,-1).join(", ")} and ${n[n.length-1]}`:n[0]??"nobody"}function an(n,t){let{bar:e,beat:i}=n.position(t+1e-6),s=Math.floor(i),r=Math.round((i-s)*1e3)/1e3;return r<.001?`${e}.${s}`:`${e}.${s}+${r}`}function Um(n,t){let e=/^(-?\d+)\.(\d+)(?:\+(\d+)\/(\d+)|\+(\d*\.?\d+))?$/.exec(t.trim());if(!e)return null;let[,i,s,r,o,a]=e;return n.barStart(Number(i))+Number(s)-1+(r?Number(r)/Number(o):Number(a??0))}function Om(n){return n.flatMap((t,e)=>{let i=n[e+1];return i&&i.start>t.end+1e-6&&i.start-t.end<=Ky+1e-6?[{start:t.end,end:i.start}]:[]})}var Ky=4;function Jh(n,t){let e=0,i=n.length;for(;e<i;){let s=e+i>>1;n[s]<=t?e=s+1:i=s}return e-1}var Pi=class{constructor(t,e,i,s){this.times=t;this.first=e;this.bars=i;this.metre=s}times;first;bars;metre;beatAt(t){let e=Math.min(Math.max(Jh(this.times,t),0),this.times.length-2),i=this.times[e+1]-this.times[e];return this.first+e+(t-this.times[e])/i}secondsAt(t){let e=t-this.first,i=Math.min(Math.max(Math.floor(e),0),this.times.length-2);return this.times[i]+(e-i)*(this.times[i+1]-this.times[i])}rateAt(t){let e=Math.min(Math.max(Jh(this.times,t),0),this.times.length-2);return 1/(this.times[e+1]-this.times[e])}barStart(t){return t<1?(t-1)*this.metre:t<=this.bars.length?this.bars[t-1]:this.bars[this.bars.length-1]+(t-this.bars.length)*this.metre}position(t){let e;t<0?e=1+Math.floor(t/this.metre):(e=Jh(this.bars,t)+1,e===this.bars.length&&(e+=Math.floor((t-this.bars[e-1])/this.metre)));let i=this.barStart(e);return{bar:e,beat:t-i+1,inBar:this.barStart(e+1)-i}}text(t){let{bar:e,beat:i}=this.position(t+1e-6);return`${e}.${Math.floor(i)}`}};var nt=Mt(null),ft=Mt(null),is=Mt(null),ei=Mt(null),Ii=Mt(null),dr=Mt([]),ni=Mt(null),hr=Mt([]),Dn=Mt(null),Uo=Mt(!1),Be=Mt(null),qn=Mt(!1),fr=Mt(null),pr=Mt(!1),mr=Mt(null),xe=Mt(""),be=Mt(null),Ns=Mt(null),Oo=Mt(!1),Ln=Mt(!1),ko=Mt(null),Ue=Mt(0),Di=Mt(!1),Kt=Mt("findings"),Fo=Mt(null),Ft=Ne(()=>ft.value?.cast.map(n=>n.name)??[]),$t=Ne(()=>{let n=ft.value?.tempo;return n?new Pi(n.times,n.first,n.bars,n.metre):null}),Li=Ne(()=>ft.value!==null&&ft.value.revision===nt.value?.revision),gr=Ne(()=>{let n=new Map;for(let t of ft.value?.blocks??[]){let e=n.get(t.who);e?e.push(t):n.set(t.who,[t])}return n});function ss(n){Be.value=n,be.value=null}var km=null;function Fm(n){km=n}function Nn(n){Ue.value=n,km?.(n)}var jy=0;function ii(n,t=!1){let e=++jy;hr.value=[...hr.value.slice(-3),{id:e,words:n,warn:t}],setTimeout(()=>hr.value=hr.value.filter(i=>i.id!==e),t?3e4:1e4)}var jh=Promise.resolve();function si(n,t,e){let i=Dl(n,t,e);return jh=i,i}async function Dl(n,t,e){Oo.value=!0,be.value=null;try{return vr(await n()),t&&(xe.value=t),!0}catch(i){let s=i instanceof Me||!(i instanceof TypeError)?String(i.message??i):"The program behind this page does not answer.";return be.value={words:s,anyway:i instanceof Me&&i.anyway&&e?e:null},xe.value=s,i instanceof Me&&i.status===409&&vr(await ie("show")),!1}finally{Oo.value=!1}}function vr(n){nt.value&&n.revision<nt.value.revision||(n.recovered&&n.recovered!==nt.value?.recovered&&ii(n.recovered),be.value?.anyway&&nt.value&&n.revision!==nt.value.revision&&(be.value=null),nt.value=n)}function Lt(n,t,e=nt.value.revision,i=!1){let s=Array.isArray(n)?{operations:n}:{operation:n};return si(()=>ge("operations",{revision:e,...s,anyway:i}),t,()=>{Lt(n,t,e,!0)})}function Qh(n){return jh=jh.then(n)}var _r=()=>Qh(async()=>nt.value?.undo&&Dl(()=>ge("undo",{}),`Undone: ${nt.value.undo}.`)),Us=()=>Qh(async()=>nt.value?.redo&&Dl(()=>ge("redo",{}),`Done again: ${nt.value.redo}.`)),yr=()=>Qh(()=>Dl(()=>ge("save",{}),"Saved.")),Kh=0;async function td(){let n=++Kh;try{let t=await ie("view");if(n!==Kh)return;ft.value=t,ni.value=null}catch(t){n===Kh&&t instanceof Me&&t.status===422&&(ni.value=t.message)}}var Bm=0;async function ed(){let n=++Bm,t=await ie("findings");if(n!==Bm)return;let e=t.findings??[];ei.value={...t,open:t.open??[],drawn:t.drawn??[],findings:e,entries:t.complete&&t.entries?t.entries:Qy(e),unseen:t.unseen??[],cautions:t.cautions??[]}}function Qy(n){let t={stop:0,warn:1,note:2},e=new Map;n.forEach((i,s)=>{let r=JSON.stringify([i.code,i.severity,i.message,i.remedies]),o=e.get(r);o?o.of.push(s):e.set(r,{severity:i.severity,start:i.start,position:i.when??i.position,message:i.message,remedies:i.remedies,of:[s]})});for(let i of e.values())i.of.length>1&&(i.message+=` (${i.of.length} times)`);return[...e.values()].sort((i,s)=>t[i.severity]-t[s.severity]||(i.start??0)-(s.start??0))}async function Ll(){try{let n=await ie("song");n.hearing!==void 0?setTimeout(()=>{Ll()},1e3):is.value=n}catch(n){if(n instanceof Me&&n.status===409)return;ii(n instanceof Error?n.message:String(n),!0)}}async function Il(){vr(await ie("show"))}function zm(n,t){n==="show"?(t.words&&t.revision>(nt.value?.revision??0)&&(xe.value=t.words),!nt.value||t.revision>nt.value.revision?Il():nt.value={...nt.value,...t,text:nt.value.text,values:nt.value.values}):n==="staged"?t.error?ni.value=In(t.error):(td(),is.value||Ll()):n==="checks"?Ii.value=t:n==="findings"?ed():n==="share"?ko.value=t:n==="outside"?Il():n==="notice"&&ii(t.message,t.severity==="warn")}function Nl(n){let t=new Map;for(let e of n){let i=e.entry??e.path;if(!i||i[0]!=="timeline")continue;let s=i.join("/"),r=t.get(s);(!r||e.start<r.start)&&t.set(s,{path:i,start:e.start})}return[...t.values()].sort((e,i)=>e.start-i.start)}async function Bo(n){let t=Nl(n);if(!t.length)return be.value={words:"Nothing is written here that could be copied.",anyway:null},!1;let e=await ge("copied",{revision:nt.value.revision,at:t.map(i=>i.path)});return mr.value={blocks:e.blocks,starts:t.map(i=>i.start-t[0].start),words:n[0].title},xe.value=`Copied: ${n[0].title}.`,!0}async function Ul(n){let t=Nl(n);await Bo(n)&&await Lt(nd(t.map(e=>e.path)),`Cut: ${n[0].title}.`)}function nd(n){let t=nt.value?.values?.timeline??[],e=new Set(n.map(r=>Number(r[1]))),i=new Set,s=[];return t.forEach((r,o)=>{let a=tx(r);if(e.has(o))a.forEach(l=>i.add(l));else if(a.some(l=>i.has(l))){let l="from"in r||"accent"in r?null:ex(o);l!==null&&s.push({do:"change-block",at:["timeline",o],values:{from:l}}),a.forEach(u=>i.delete(u))}}),[...s,{do:"delete-blocks",at:n}]}function tx(n){return n.who===void 0||n.who==="all"?Ft.value:[n.who].flat()}function ex(n){let e=(ft.value?.blocks??[]).filter(i=>i.entry?.[0]==="timeline"&&i.entry[1]===n).reduce((i,s)=>i===null||s.start<i.start?s:i,null);return e&&$t.value?an($t.value,e.start):null}async function Ol(n,t){let e=Be.value,i=mr.value;if(!e||!i)return;let s=i.starts.map(r=>n(e.beat+r));await Lt({do:"paste-blocks",into:["timeline"],blocks:i.blocks,starts:s,before:t(e.beat)},`Pasted: ${i.words}.`)}var Os=Mt(null),xr=Mt(null),nx={done:"is ready",failed:"could not be made",stopped:"was stopped"};async function kl(){[Os.value,xr.value]=await Promise.all([ie("draft"),ie("print")])}var id=0;_n(()=>{let n=nt.value?.revision??0;id&&n!==id&&(Os.peek()?.state==="done"||xr.peek()?.state==="done")&&kl().catch(()=>{}),id=n});function Vm(n){let t=n.kind==="draft"?Os:xr;if(n.state==="working"&&t.value&&t.value.state==="working"){t.value={...t.value,...n};return}let e=t.value?.state;kl().then(()=>{let i=nx[n.state];e==="working"&&i&&(xe.value=`${n.kind==="draft"?"The draft":"What you asked for"} ${i}.`)},()=>{})}async function yn(n,t={}){be.value=null;try{let e=await ge(n,t);return n.startsWith("draft")?Os.value=e:n.startsWith("begin")||(xr.value=e),!0}catch(e){let i=e instanceof Me||!(e instanceof TypeError)?e.message:"The program behind this page does not answer.";return be.value={words:i,anyway:null},xe.value=i,!1}}function Gm(n){return n<60?`${Math.round(n)} s`:`${Math.floor(n/60)} min ${Math.round(n%60)} s`}var ix=Symbol.for("pv"),sx=0;function c(n,t,e,i,s,r){t||(t={});var o,a,l=t;if("ref"in l&&typeof n!="function")for(a in l={},t)a=="ref"?o=t[a]:l[a]=t[a];var u={type:n,props:l,key:e,ref:o,__k:null,__:null,__b:0,__e:null,__c:null,constructor:ix,__v:--sx,__i:-1,__u:0};return(s||r)&&(u.__source=s,u.__self=r),re.vnode&&re.vnode(u),u}var rx=6,Fl=Mt(!1);function zo(n,t){let e=pe(!1);Vt(()=>{let i=document.activeElement,s=!i||i===document.body||i.closest("[hidden]");(e.current||Fl.value)&&s&&n.current?.querySelector("h2, h3")?.focus({preventScroll:!0}),e.current=!0,Fl.value=!1},[t])}function Hm(){let n=Os.value,t=pe(null);return zo(t,n?.state),nt.value?.readable?c("div",{ref:t,class:"drafting",children:n?.state==="working"?c(hx,{now:n}):n?.state==="done"&&n.offer?c(dx,{now:n}):c(ox,{now:n})}):c("p",{class:"quiet",children:"The file cannot be read as a show: mend it under Text, then a routine can be drafted."})}function ox({now:n}){let t=ux(),e=Be.value?Wm(Be.value.beat):null,i=ft.value?.sections??[],[s,r]=rt(""),[o,a]=rt(0),l=u=>{yn("draft",{seed:o,...u})};return c(Pt,{children:[c("h3",{tabIndex:-1,children:"A routine for this song"}),c("p",{children:"Fills what is empty with moves that everybody can dance at this tempo, and checks the whole. What you wrote yourself is left as it is. You see it first, then you decide."}),n?.state==="failed"&&c("p",{class:"fault",role:"alert",children:n.error&&In(n.error)}),n?.state==="stopped"&&c("p",{class:"fault",children:br(n.words)}),c("p",{class:"row",children:[c("button",{type:"button",class:"main",onClick:()=>l({}),children:t?"Draft anew what was drafted":"Draft what is empty"}),t&&c("button",{type:"button",onClick:()=>l({another:!0}),children:"Another routine"})]}),c("fieldset",{children:[c("legend",{children:"Only a part of the song"}),c("p",{children:[c("label",{children:["Section ",c("select",{value:s,onChange:u=>r(u.currentTarget.value),children:[c("option",{value:""}),i.map(u=>c("option",{value:u.name,children:u.name},u.name))]})]}),c("button",{type:"button",disabled:!s,onClick:()=>l({section:s}),children:"Draft this section"}),t&&c("button",{type:"button",disabled:!s,onClick:()=>l({section:s,another:!0}),children:"Another one for it"})]}),e?c("p",{children:[c("span",{children:["The empty stretch at the chosen count, ",e.from," to ",e.until]})," ",c("button",{type:"button",onClick:()=>l({span:[e.from,e.until]}),children:"Draft this stretch"})]}):c("p",{class:"quiet",children:"Or choose an empty count in the sheet: then the stretch around it can be drafted."})]}),c(ax,{}),c("p",{class:"row",children:c("label",{children:["Seed ",c("input",{type:"number",min:0,step:1,value:o,"aria-describedby":"seed-why",onInput:u=>a(Math.max(0,Math.round(Number(u.currentTarget.value)||0)))})]})}),c("p",{class:"quiet",id:"seed-why",children:"The same seed gives the same routine; another one decides otherwise where it costs little."})]})}function ax(){let n=nt.value?.values?.cast??[];return c("fieldset",{children:[c("legend",{children:"What everybody can dance"}),n.map(t=>c("p",{children:[c("label",{children:[t.name," ",c("select",{value:String(t.level??""),onChange:e=>{Lt({do:"change-person",group:"cast",name:t.name,values:{level:e.currentTarget.value?Number(e.currentTarget.value):null}},`${t.name}: level ${e.currentTarget.value||"not said"}.`)},children:[c("option",{value:"",children:t.repertoire?"only what is listed":"level 3, as nothing is said"}),[1,2,3,4,5].map(e=>c("option",{value:e,children:lx[e]},e))]})]}),t.repertoire&&c("span",{class:"quiet",children:cx(t.repertoire)})]},t.name)),c("p",{class:"row",children:[c("button",{type:"button",onClick:()=>sd("Cast"),children:"Moves known, learnt, never danced"}),c("button",{type:"button",onClick:()=>sd("Wishes for drafts"),children:"Wishes"})]})]})}var lx=["","level 1: first moves","level 2: easy","level 3: middling","level 4: hard","level 5: everything"];function cx(n){return Object.entries(n).map(([t,e])=>`${t}: ${[e].flat().join(", ")}`).join("; ")}function sd(n,t=50){Kt.value="forms",setTimeout(()=>{let i=[...document.querySelectorAll(".forms > details > summary")].find(s=>s.textContent===n);if(!i){t>0&&Kt.value==="forms"&&sd(n,t-1);return}i.parentElement.open=!0,i.scrollIntoView({block:"start"}),i.focus()},60)}function ux(){return(nt.value?.values?.timeline??[]).some(t=>t&&"drafted"in t)}function Wm(n){let t=ft.value,e=$t.value;if(!t||!e)return null;let i=t.blocks.filter(a=>a.path!==null);if(i.some(a=>a.start<n+1-1e-6&&a.end>n+1e-6))return null;let s=Math.floor(e.beatAt(t.duration)+1e-6),r=Math.ceil(Math.max(0,...i.map(a=>a.end).filter(a=>a<=n+1e-6))-1e-6),o=Math.floor(Math.min(s,...i.map(a=>a.start).filter(a=>a>n+1e-6))+1e-6);return o-r<rx?null:{from:an(e,r),until:an(e,o)}}function $m({beat:n}){let t=Wm(n);return t?c("button",{type:"button",onClick:()=>{Kt.value="draft",qn.value=!1,Fl.value=!0,yn("draft",{span:[t.from,t.until]})},children:["Draft ",t.from," to ",t.until]}):null}function Xm(){if(!ft.value||ft.value.blocks.length||!nt.value?.readable)return null;let n=()=>{Kt.value="draft",Fl.value=!0,yn("draft",{})};return c("div",{class:"first",children:[c("p",{children:"Nothing is danced yet. Click a count, or walk there with the arrow keys and press Enter, to put a move there; or let a routine be drafted for the whole song."}),Os.value?.state!=="working"&&c("button",{type:"button",class:"main",onClick:n,children:"Draft a first routine"})]})}function hx({now:n}){return c(Pt,{children:[c("h3",{tabIndex:-1,children:["Drafting",qm(n)]}),c(Vo,{now:n}),c("p",{class:"row",children:[c("button",{type:"button",disabled:n.stopping,onClick:()=>{yn("draft/stop",{keep:!0})},children:n.stopping?"Stopping \u2026":"Stop, and show the best so far"}),c("button",{type:"button",onClick:()=>{yn("draft/stop")},children:"Give it up"})]}),c("p",{class:"quiet",children:"You can go on planning meanwhile. What you change then is put together with the draft, where both touch different places."})]})}function Vo({now:n}){let[t,e]=rt(n.seconds);return Vt(()=>{e(n.seconds);let i=setInterval(()=>e(s=>s+1),1e3);return()=>clearInterval(i)},[n.seconds]),c("p",{class:"progressing",children:[c("progress",{max:1,value:n.share,"aria-label":n.words}),c("span",{children:[Math.round(100*n.share)," %, ",Gm(t)]}),c("span",{class:"quiet",children:[n.words," \u2026"]})]})}var qm=n=>n.asked.section?` ${n.asked.section}`:n.asked.span?` ${n.asked.span.join(" to ")}`:"",br=n=>n?`${n[0].toUpperCase()}${n.slice(1)}${/[.!?]$/.test(n)?"":"."}`:"";function dx({now:n}){let t=n.offer,e=async()=>{await si(()=>ge("draft/lay",{number:n.number}),"The draft is in the show.")&&(Kt.value="findings")},{section:i,span:s}=n.asked,r=()=>{yn("draft",{section:i,span:s,another:!0,seed:n.asked.seed})},o=new Map;for(let a of t.rows)o.set(a.section,[...o.get(a.section)??[],a]);return c(Pt,{children:[c("h3",{tabIndex:-1,children:["This could be danced",qm(n)]}),t.words.map((a,l)=>c("p",{class:/^(NOT checked|cannot be flown|left out)/.test(a)?"caution":l?"quiet":"",children:br(fx(a))},l)),!t.new&&c("p",{class:"caution",children:"It is what stands in the show already."}),n.older&&c("p",{class:"caution",children:"The show has been changed since this was begun. Both changes are put together where they touch different places; else you are told."}),c("p",{class:"row",children:[c("button",{type:"button",class:"main",disabled:!t.new,onClick:()=>{e()},children:"Put it into the show"}),c("button",{type:"button",onClick:r,children:"Another one"}),c("button",{type:"button",onClick:()=>{yn("draft/stop")},children:"Leave it"})]}),c("p",{class:"quiet",children:"It is kept as an offer until you put it into the show or leave it, even if the program ends before."}),c("div",{class:"offered",children:[...o].map(([a,l])=>c("section",{"aria-label":a,children:[c("h4",{children:a}),c("ol",{children:l.map(u=>c("li",{children:[c("b",{children:u.position})," ",c("span",{children:u.words})]},u.position))})]},a))}),t.why.length>0&&c("details",{children:[c("summary",{children:"What it costs, and why"}),c("pre",{tabIndex:0,children:t.why.join(`
`)})]}),t.lines.length>0&&c("details",{children:[c("summary",{children:"What changes in the file"}),c("pre",{tabIndex:0,children:t.lines.map(a=>[...a.out.map(l=>`\u2212 ${l}`),...a.in.map(l=>`+ ${l}`)].join(`
`)).join(`
\u2026
`)})]})]})}function fx(n){return n.replace(": run `sequencer check` before you rely on it",": the checks look at it once it is in the show").replace(": `sequencer check --mend` mends it as far as it goes",": Findings offers mends once it is in the show")}var wr=Mt(null),px=["","1: first moves","2: easy","3: middling","4: hard","5: everything"];async function Go(){wr.value=await ie("begin")}function Zm(n){if(wr.value?.state==="working"&&n.state==="working"){wr.value={...wr.value,...n};return}n.state==="done"?mx(n.number):Go().catch(()=>{})}async function mx(n){try{vr(await ge("begin/take",{number:n})),Kt.value="draft"}catch(t){vr(await ie("show")),nt.value?.text.trim()||(be.value={words:t.message,anyway:null})}ie("patterns").then(t=>dr.value=t.patterns,()=>{})}function Jm(){let n=wr.value;Vt(()=>{Go().catch(()=>{})},[]);let[t,e]=rt(null),[i,s]=rt(null),[r,o]=rt([{name:"",stature:"1.70 m",prop:"poi",level:2}]),[a,l]=rt(null),u=pe(null),h=pe(null);if(zo(h,n?.state),!n||!nt.value)return c("main",{class:"opening",children:c("p",{children:"Looking for songs \u2026"})});let d=i??n.track??n.songs[0]??"",p=a??[`${Math.max(8,4*r.length)} m`,"8 m"],f=(v,m)=>o(r.map((y,M)=>M===v?{...y,...m}:y)),g=()=>{o([...r,{...r[r.length-1],name:""}]),setTimeout(()=>[...u.current?.querySelectorAll("input.name")??[]].pop()?.focus())},_=async()=>{await yn("begin",{title:t??n.title,track:d,cast:r,floor:p})&&await Go()};return n.state==="working"||n.state==="done"?c(Pt,{children:[c(Ym,{}),c("main",{class:"beginning",children:c("div",{ref:h,class:"hearing",children:[c("h2",{tabIndex:-1,children:"Hearing the song"}),c("p",{children:"Beats, bars and sections are found. That takes a while, once for each song."}),c(Vo,{now:n}),c("p",{class:"row",children:c("button",{type:"button",onClick:()=>{yn("begin/stop").then(Go)},children:"Give it up"})})]})})]}):c(Pt,{children:[c(Ym,{}),c("main",{class:"beginning",children:c("form",{onSubmit:v=>{v.preventDefault(),_()},children:[c("p",{children:"Say which song it is and who dances. All of this can be changed later."}),n.state==="failed"&&c("p",{class:"fault",role:"alert",children:br(n.error?[n.error.what,n.error.mend].filter(Boolean).join("; "):"")}),c("p",{class:"field",children:[c("label",{for:"new-title",children:"Title"}),c("input",{id:"new-title",type:"text",value:t??n.title,onInput:v=>e(v.currentTarget.value)})]}),c(Km,{songs:n.songs,value:d,choose:s}),c("fieldset",{ref:u,class:"dancers",children:[c("legend",{children:"Who dances"}),r.map((v,m)=>c("div",{class:"dancer",role:"group","aria-label":v.name||`Performer ${m+1}`,children:[c("label",{children:["Name ",c("input",{class:"name",type:"text",required:!0,value:v.name,onInput:y=>f(m,{name:y.currentTarget.value})})]}),c("label",{children:["Stature ",c("input",{type:"text",required:!0,value:v.stature,size:7,onInput:y=>f(m,{stature:y.currentTarget.value})})]}),c("label",{children:["Prop ",c("select",{value:v.prop,onChange:y=>f(m,{prop:y.currentTarget.value}),children:n.props.map(y=>c("option",{value:y,children:y},y))})]}),c("label",{children:["Level ",c("select",{value:String(v.level),onChange:y=>f(m,{level:Number(y.currentTarget.value)}),children:[1,2,3,4,5].map(y=>c("option",{value:y,children:px[y]},y))})]}),r.length>1&&c("button",{type:"button","aria-label":`Take out ${v.name||`performer ${m+1}`}`,onClick:()=>o(r.filter((y,M)=>M!==m)),children:"Take out"})]},m)),c("p",{class:"row",children:c("button",{type:"button",onClick:g,children:"Add somebody"})}),c("p",{class:"quiet",children:"Stature is body height, as you say it: 1.70 m, 170 cm or 5 ft 7 in. The level says which moves a draft may use."})]}),c("fieldset",{children:[c("legend",{children:"The floor"}),c("label",{children:["Width ",c("input",{type:"text",size:6,value:p[0],onInput:v=>l([v.currentTarget.value,p[1]])})]}),c("label",{children:["Depth ",c("input",{type:"text",size:6,value:p[1],onInput:v=>l([p[0],v.currentTarget.value])})]})]}),c("p",{class:"row",children:c("button",{type:"submit",class:"main",disabled:!d.trim(),children:"Make the show"})})]})})]})}var Ym=()=>c("header",{class:"top",children:[c("h1",{children:"A new show"}),c("p",{class:"file",children:["becomes ",nt.value.file," in ",nt.value.folder]})]});function Km({songs:n,value:t,choose:e}){let[i,s]=rt(""),r=async o=>{if(o){s(`${o.name} is being put beside the show \u2026`);try{let{file:a}=await um(o);e(a),s(`${a} lies beside the show now.`)}catch(a){s(a instanceof Me||!(a instanceof TypeError)?a.message:"The program behind this page does not answer.")}}};return c("fieldset",{class:"song",children:[c("legend",{children:"The song"}),n.length>0&&c("p",{children:c("label",{children:["Beside the show ",c("select",{value:n.includes(t)?t:"",onChange:o=>o.currentTarget.value&&e(o.currentTarget.value),children:[!n.includes(t)&&c("option",{value:""}),n.map(o=>c("option",{value:o,children:o},o))]})]})}),c("p",{children:c("label",{children:["Its path ",c("input",{type:"text",value:t,placeholder:"my-song.mp3",onInput:o=>e(o.currentTarget.value)})]})}),c("p",{children:c("label",{children:["Or bring one from elsewhere ",c("input",{type:"file",accept:"audio/*,.wav,.flac,.ogg,.mp3",onChange:o=>{r(o.currentTarget.files?.[0])}})]})}),i&&c("p",{class:"quiet",role:"status",children:i})]})}function rd({cut:n=!1}){let t=wr.value,[e,i]=rt(null);Vt(()=>{Go().catch(()=>{})},[nt.value?.revision]);let s=nt.value?.values?.track?.file??"",r=e??s,o=(a=!1)=>si(()=>ge("track",{file:r,revision:nt.value.revision,anyway:a}),`${r} is the song now.`,()=>{o(!0)}).then(l=>l&&i(null));return c("form",{class:"song-file",onSubmit:a=>{a.preventDefault(),o()},children:[c(Km,{songs:t?.songs??[],value:r,choose:i}),c("p",{class:"row",children:c("button",{type:"submit",disabled:!r.trim()||r===s&&!n,children:"Take this song"})})]})}function jm(){let n=Ii.value?.error?.code==="another-cut",t=nt.value?.track_there===!1;return!n&&!t?null:c("div",{class:"first",children:[c("p",{children:t?"The song of this show is not where the file says. Say where it is, or take another one.":"The song is not the cut that this show was made for. Put the old file back, or take the new one: then every move is on its count in the new cut."}),c(rd,{cut:n})]})}var ln=Mt(null),ri=Mt(null),od=null,Ho=Mt(!1),ad=Ne(()=>{let n=ri.value?.tempo;return ln.value&&n?new Pi(n.times,n.first,n.bars,n.metre):null}),rs=Ne(()=>ad.value??$t.value),Wo=Ne(()=>nt.value?.values?.track?.corrections??{});function Mr(n){let t=ln.value?.values??{};return(n in t?t[n]:Wo.value[n])??null}function Ni(n,t){let e={...ln.value?.values,...n};for(let i of Object.keys(e))gx(e[i],Wo.value[i])&&delete e[i];Qm({values:e,sections:ln.value?.sections??null},t)}function zl(n,t){Qm({values:ln.value?.values??{},sections:n},t)}var gx=(n,t)=>(n??null)===null?(t??null)===null:JSON.stringify(n)===JSON.stringify(t)||String(n)===String(t??"");function Qm(n,t){xe.value=t,ln.value=Object.keys(n.values).length||n.sections?n:null,ln.value?cd():ri.value=null}function ld(){ln.value=ri.value=null}var Bl=0;async function cd(){let n=ln.value,t=++Bl;if(!(!n||!nt.value)){Ho.value=!0;try{let e=await ge("count",{revision:nt.value.revision,operation:ig(n),hold:vx(n)});if(t!==Bl||ln.value!==n)return;od=n,ri.value=e,be.value=null}catch(e){if(t!==Bl)return;let i=e instanceof Me?e.message:"The program behind this page does not answer.";be.value={words:i,anyway:null},xe.value=i}finally{t===Bl&&(Ho.value=!1)}}}var tg=Ne(()=>ri.value!==null&&!Ho.value&&od===ln.value);function eg(n){return ig(n,od===n?ri.value?.held:null)}async function ng(n){let t={do:"correct-count",values:n};if(!ud()||!nt.value)return t;try{let e=await ge("count",{revision:nt.value.revision,operation:t,hold:ft.value.sections.map(i=>i.start)});return e.held?{do:"do-together",operations:[t,{do:"set-sections",sections:e.held}],said:"correct the count"}:t}catch(e){if(e instanceof Me)return t;throw e}}function ig(n,t=null){let e={do:"correct-count",values:n.values},i=n.sections??(t?dd():null);if(!i)return e;let s={..._x(i),...t?{sections:t}:{}};return Object.keys(n.values).length?{do:"do-together",operations:[e,s],said:"set the count and the sections"}:s}function vx(n){return Object.keys(n.values).length&&(n.sections||ud())?(n.sections??ft.value?.sections??[]).map(t=>"seconds"in t?t.seconds:t.start):null}function _x(n){let t=hd(n.map(r=>r.name)),e=n.flatMap((r,o)=>r.was!==null&&r.was!==t[o]?[[r.was,t[o]]]:[]),i=new Set(n.map(r=>r.was)),s=(ft.value?.sections??[]).map(r=>r.name).filter(r=>!i.has(r));return{do:"set-sections",sections:n.map(r=>[r.start,r.name]),renamed:e,gone:s}}var sg=()=>Wo.value.sections??[];function ud(){let n=ft.value?.sections??[],t=sg();return t.length>0&&t.length===n.length&&t.every((e,i)=>e.name===n[i].label)}function hd(n){let t=new Map;return n.map(e=>n.filter(i=>i===e).length===1?e:(t.set(e,(t.get(e)??0)+1),`${e} ${t.get(e)}`))}function dd(){let n=ln.value?.sections;if(n){let s=ri.value?.sections;return s?.length===n.length?n.map((r,o)=>({...r,seconds:s[o].start})):n}let t=ft.value?.sections??[],e=sg(),i=ud();return t.map((s,r)=>({start:i?String(e[r].from):Sr(s.start),name:s.label,was:s.name,seconds:s.start}))}function Sr(n){let t=rs.value;if(!t||n<=0)return ks(Math.max(0,n));let e=Math.round(t.beatAt(n));return Math.abs(t.secondsAt(e)-n)<.02?t.text(e):ks(n)}function ks(n){let t=Math.round(n*1e3);return`${Math.floor(t/6e4)}:${(t%6e4/1e3).toFixed(3).padStart(6,"0").replace(/(\.\d)0+$|(\.\d\d)0$/,"$1$2")}`}var Tr=class extends Error{},Ui=class{constructor(t){this.duration=t}duration;silent=!0;anchor=0;started=null;rate=1;span=null;volume=1;get playing(){return this.started!==null}now(){if(this.started===null)return this.anchor;let t=this.anchor+(performance.now()-this.started)/1e3*this.rate;if(this.span&&t>=this.span[1]){let[e,i]=this.span;return this.anchor=e+(t-i)%(i-e),this.started=performance.now(),this.anchor}return t<this.duration?t:(this.anchor=this.duration,this.started=null,this.duration)}async play(){this.now()>=this.duration&&(this.anchor=0),this.started??=performance.now()}pause(){this.anchor=this.now(),this.started=null}loop(t){this.span=t}seek(t){this.anchor=Math.min(Math.max(t,0),this.duration),this.started!==null&&(this.started=performance.now())}get speed(){return this.rate}set speed(t){let e=this.now();this.rate=t,this.seek(e)}};var Vl=class{constructor(t){this.tempo=t}tempo;context=null;next=-1/0;on=!1;count(t){this.tempo=t,this.next=-1/0}audio(t){try{this.context??=t.context??null,this.context??=new AudioContext({latencyHint:"interactive"}),this.context.state==="suspended"&&this.context.resume()}catch{return null}return this.context}click(t,e){let i=this.context;if(!i)return;let s=i.createOscillator(),r=i.createGain();s.type=e?"triangle":"sine",s.frequency.value=e?1760:1175,r.gain.setValueAtTime(e?.5:.32,t),r.gain.exponentialRampToValueAtTime(.001,t+.06),s.connect(r).connect(i.destination),s.start(t),s.stop(t+.08)}run(t,e){if(!this.on||!t.playing){this.next=-1/0;return}let i=this.audio(t);if(!i)return;let s=this.tempo.beatAt(e);for((this.next<s-.5||this.next>s+8)&&(this.next=Math.ceil(s));;){let r=(this.tempo.secondsAt(this.next)-e)/t.speed;if(r>.12)break;if(r>-.01){let{beat:o}=this.tempo.position(this.next+1e-6),a=t.when?0:i.outputLatency||0,l=t.when?.(this.tempo.secondsAt(this.next))??i.currentTime+r-a;this.click(Math.max(l,i.currentTime),Math.floor(o)===1)}this.next+=1}}countIn(t,e,i,s,r){let o=this.audio(t),a=this.tempo.beatAt(e),{inBar:l}=this.tempo.position(a+1e-6),u=1/(this.tempo.rateAt(e)*i);for(let h=0;h<l&&o;h++)this.click(o.currentTime+.05+h*u,h===0);return new Promise(h=>{let d=performance.now()+50,p=()=>{if(r.aborted)return h(!1);let f=Math.floor((performance.now()-d)/1e3/u);if(f>=l)return h(!0);s(Math.max(f,0)+1),requestAnimationFrame(p)};p()})}};var fd=40,pd=110,rg=5,Gl=class{constructor(t,e,i){this.clock=t;this.told=i;this.clicks=new Vl(e)}clock;told;clicks;a=null;b=null;repeat=!1;countIn=!1;counting=null;count(t){this.clicks.count(t)}take(t){let e=this.clock;this.clock=t,t.seek(e.now()),t.speed=e.speed}async toggle(){if(this.clock.playing||this.counting)return this.stop();let{span:t}=this;if(t){let e=this.clock.now();(e<t[0]-.01||e>=t[1]-.01)&&this.clock.seek(t[0])}if(this.countIn&&!await this.counted())return this.told.changed();try{await this.clock.play()}catch(e){e instanceof Tr?(this.told.notice("This browser makes no sound here. The show plays without sound."),this.take(new Ui(this.clock.duration)),this.clock.play()):this.told.notice("The browser did not start the song; press Play again.")}this.told.changed()}async counted(){let t=new AbortController;this.counting=t,this.told.changed();let e=await this.clicks.countIn(this.clock,this.clock.now(),this.clock.speed,i=>this.told.counted(i),t.signal);return this.told.counted(null),this.counting=null,e}stop(){this.counting?.abort(),this.clock.pause(),this.told.changed()}get span(){return this.repeat&&this.a!==null&&this.b!==null?[this.a,this.b]:null}mark(t,e){this[t]=e,this.a!==null&&this.b!==null&&this.a>this.b&&([this.a,this.b]=[this.b,this.a]),this.a!==null&&this.b!==null&&this.b-this.a>.05&&!this.repeat&&this.turn()}lift(){this.a=this.b=null,this.repeat=!1}turn(){this.repeat=!this.repeat,this.repeat&&(this.a??=0,this.b??=this.clock.duration)}pace(t){let e=Math.min(pd,Math.max(fd,Math.round(t/rg)*rg));return this.clock.speed=e/100,e}frame(){let{clock:t,span:e}=this,i=t.playing,s=t.now();return t.loop?.(e),i&&!t.loop&&e&&s>=e[1]&&(t.seek(e[0]),s=e[0],t.playing||t.play()),this.clicks.run(t,s),s}};var Hl=class{constructor(t,e,i,s){this.buffer=t;this.start=i;this.speed=s;this.hop=Math.round(.03*t.sampleRate/2),this.size=2*this.hop,this.reach=Math.round(.005*t.sampleRate),this.window=Float32Array.from({length:this.size},(r,o)=>.5-.5*Math.cos(2*Math.PI*o/this.size)),this.tail=Array.from({length:t.numberOfChannels},()=>new Float32Array(this.hop)),this.mono=e}buffer;start;speed;size;hop;reach;window;tail;frame=0;last=null;mono;next(t){let{hop:e,size:i,window:s,buffer:r,speed:o}=this,a=this.tail.map(()=>new Float32Array(t*e+e));this.tail.forEach((l,u)=>a[u].set(l));for(let l=0;l<t;l++,this.frame++){let u=this.start*r.sampleRate+(this.frame+1)*e*o,h=this.best(Math.round(u-e));for(let d=0;d<a.length;d++){let p=r.getChannelData(d),f=a[d];for(let g=0;g<i;g++){let _=h+g;_>=0&&_<p.length&&(f[l*e+g]+=s[g]*p[_])}}this.last=h}return this.tail=a.map(l=>l.slice(t*e)),a.map(l=>l.slice(0,t*e))}best(t){let{last:e,hop:i,reach:s,mono:r}=this;if(e===null)return t;let o=e+i,a=(d,p)=>{let f=0,g=1e-9;for(let _=0;_<i;_+=p){let v=r[d+_]||0;f+=v*(r[o+_]||0),g+=v*v}return f/Math.sqrt(g)},l=t,u=-1/0;for(let d=-s;d<=s;d+=6){let p=a(t+d,6);p>u&&(u=p,l=t+d)}let h=l;u=-1/0;for(let d=Math.max(h-5,t-s);d<=Math.min(h+5,t+s);d++){let p=a(d,3);p>u&&(u=p,l=d)}return l}};var yx=1.6,xx=.4,bx=1105/44100,wx=.004,Mx=3e3,Sx=.04,Wl=class{constructor(t,e,i){this.duration=e;this.context=new AudioContext({latencyHint:"interactive"}),this.output=this.context.createGain(),this.output.connect(this.context.destination),this.ready=this.context.decodeAudioData(t).then(s=>{this.buffer=s,this.skip=s.duration-e>.02?bx:0,this.mono=new Float32Array(s.length);for(let r=0;r<s.numberOfChannels;r++){let o=s.getChannelData(r);for(let a=0;a<o.length;a++)this.mono[a]+=o[a]}},()=>i("This browser cannot read the song."))}duration;silent=!1;context;output;buffer=null;mono=new Float32Array(0);skip=0;ready;rate=1;rest=0;on=!1;pieces=[];nodes=[];stretcher=null;timer=0;span=null;shown=0;stamp=0;get playing(){return this.on}heard(){return this.stamped()??this.context.currentTime-(this.context.outputLatency||this.context.baseLatency||0)}stamped(){let{context:t}=this,e=t.getOutputTimestamp?.();if(!e?.contextTime||!e.performanceTime)return null;let i=e.contextTime+(performance.now()-e.performanceTime)/1e3;return i<=t.currentTime+.01&&i>t.currentTime-.6?i:null}at(t){return this.on?this.songAt(this.heard()-Math.max(0,performance.now()-t)/1e3):this.rest}latency(){let t=this.stamped();return t!==null?Math.max(0,this.context.currentTime-t):this.context.outputLatency||null}songAt(t){let{pieces:e}=this,i=e.length-1;for(;i>0&&e[i].at>t;)i--;let s=e[i];return s?Math.min(s.to,s.from+Math.max(0,t-s.at)*this.rate):this.rest}now(){if(!this.on)return this.rest;let t=this.songAt(this.heard()),e=performance.now(),i=this.shown+(e-this.stamp)/1e3*this.rate,s=t-i,r=wx*this.rate;return this.shown=Math.abs(s)>.03?t:Math.min(t+r,Math.max(t-r,i+.2*s)),this.stamp=e,t>=this.duration-.001&&!this.span&&(this.pause(),this.rest=this.duration),Math.max(0,this.shown)}when(t){for(let e of this.pieces)if(e.from<=t&&t<e.to){let i=e.at+(t-e.from)/this.rate;if(i>this.context.currentTime-.02)return i}return null}async play(){if(await this.ready,await Promise.race([this.context.resume(),new Promise(t=>setTimeout(t,Mx))]),this.context.state!=="running")throw new Tr;this.buffer&&(this.rest>=this.duration-.01&&(this.rest=0),this.on=!0,this.begin(this.rest))}pause(){this.rest=this.on?Math.max(0,this.songAt(this.heard())):this.rest,this.on=!1,this.hush()}seek(t){this.rest=Math.min(Math.max(t,0),this.duration),this.on&&this.begin(this.rest)}loop(t){t?.[0]===this.span?.[0]&&t?.[1]===this.span?.[1]||(this.span=t,this.on&&this.begin(this.songAt(this.heard())))}get speed(){return this.rate}set speed(t){if(t===this.rate)return;let e=this.on?this.songAt(this.heard()):this.rest;this.rate=t,this.on&&this.begin(e)}get volume(){return this.output.gain.value}set volume(t){this.output.gain.value=t}hush(){clearInterval(this.timer);for(let{node:t}of this.nodes)t.stop();this.nodes=[],this.pieces=[],this.stretcher=null}begin(t){this.hush(),this.rest=this.shown=t,this.stamp=performance.now(),this.pieces=[{at:this.context.currentTime+Sx,from:t,to:t}],this.fill(),this.timer=window.setInterval(()=>this.fill(),100)}fill(){let{context:t,pieces:e}=this;if(!(!this.buffer||!this.on)){for(;e.length>2&&e[1].at<t.currentTime-2;)e.shift();for(this.nodes=this.nodes.filter(({until:i})=>i>t.currentTime-.1);;){let i=e[e.length-1],s=i.at+(i.to-i.from)/this.rate;if(s>t.currentTime+yx)return;let r=this.span?this.span[1]:this.duration,o=i.to>=r-1e-6;if(o&&!this.span)return;let a=o&&this.span?this.span[0]:i.to;o&&(this.stretcher=null);let l=this.hand(s,a,Math.min(r,a+Math.max(.05,xx*this.rate)));if(l<=a)return;e.push({at:s,from:a,to:l})}}}hand(t,e,i){let s=this.buffer,r=this.context.createBufferSource();r.connect(this.output);let o=i;if(this.rate===1)r.buffer=s,r.start(t,e+this.skip,i-e);else{this.stretcher??=new Hl(s,this.mono,e+this.skip,this.rate);let{hop:a}=this.stretcher,l=Math.max(1,Math.ceil((i-e)/this.rate*s.sampleRate/a-1e-6)),u=this.stretcher.next(l),h=this.context.createBuffer(u.length,l*a,s.sampleRate);u.forEach((d,p)=>h.copyToChannel(d,p)),r.buffer=h,r.start(t),o=Math.min(this.duration,e+l*a/s.sampleRate*this.rate)}return this.nodes.push({node:r,until:t+(o-e)/this.rate}),o}};var Ar=Mt(!1),Fs=Mt(100),Bs=Mt(null),md=Mt(null),gd=class{player=null;drawn=[];loaded=!1;dirty=!0;constructor(){_n(()=>{let e=ft.value?.duration,i=ad.value??$t.value;!e||!i||(this.player?(this.player.count(i),!this.loaded&&this.player.clock.duration!==e&&this.player.take(new Ui(e))):this.player=this.made(e,i))}),Fm(e=>this.seek(e));let t=()=>{this.frame(),requestAnimationFrame(t)};requestAnimationFrame(t)}made(t,e){let i=new Gl(new Ui(t),e,{changed:()=>Di.value=i.clock.playing||i.counting!==null,counted:s=>md.value=s,notice:s=>ii(s,!0)});return i.clock.seek(Ue.peek()),i}get clock(){return this.player?.clock??Tx}touch(){this.dirty=!0}seek(t){this.clock.seek(t),Ue.value=this.clock.now(),this.dirty=!0}async toggle(){this.player&&(!this.player.clock.playing&&!this.player.counting&&await this.load(),await this.player.toggle(),this.dirty=!0)}async load(){if(this.loaded||!this.player)return;this.loaded=!0;let t=ft.value?.duration??1,e=i=>ii(`${i} The show plays without sound.`,!0);try{let i=new Wl(await hm("track.mp3"),t,s=>{this.player.take(new Ui(t)),e(s)});this.player.take(i)}catch(i){e(i instanceof Error?i.message:String(i))}}setClicks(t){Ar.value=t,this.player&&(this.player.clicks.on=t)}setPace(t){Fs.value=this.player?.pace(t)??100,this.dirty=!0}setRepeat(t){this.player&&(this.player.lift(),t&&(this.player.mark("a",t[0]),this.player.mark("b",t[1])),Bs.value=this.player.span)}frame(){if(!this.player)return;let t=this.player.clock.playing,e=this.player.frame();t&&(Ue.value=e);let i=t||this.player.counting!==null;if(Di.value!==i&&(Di.value=i),t&&Ax(),!(!t&&!this.dirty)){this.dirty=!1;for(let s of this.drawn)s(e)}}},Tx=new Ui(1),og=null;function Ax(){let n=document.querySelector(".head")?.closest(".eight")??null;n&&n!==og&&n.scrollIntoView({block:"nearest"}),og=n}var Ce=new gd;function ag(){let n=$t.value,t=ft.value;if(!n||!t)return null;let e=Ue.value,i=n.beatAt(e),{bar:s,beat:r}=n.position(Math.max(i,n.first)+1e-6),o=l=>Ce.seek(Math.max(0,n.secondsAt(n.barStart(s+l)))),a=t.sections.find(l=>e>=l.start&&e<l.end)??null;return c("footer",{class:"transport","aria-label":"The song",children:[c("button",{type:"button",title:"A bar back",onClick:()=>o(-1),children:"\u2039 bar"}),c("button",{type:"button",class:"main",onClick:()=>{Ce.toggle()},title:"Play or stop (Space)",children:Di.value?"Stop":"Play"}),c("button",{type:"button",title:"A bar on",onClick:()=>o(1),children:"bar \u203A"}),c("p",{class:"where",children:[c("b",{children:md.value??s}),md.value===null&&` . ${Math.floor(r)}`]}),c("input",{type:"range",min:0,max:t.duration,step:.1,value:e,"aria-label":"Where the song is","aria-valuetext":`bar ${s}, count ${Math.floor(r)}`,onInput:l=>Ce.seek(Number(l.currentTarget.value))}),c("p",{class:"time",children:[Er(e)," of ",Er(t.duration)]}),c("details",{class:"how",children:[c("summary",{children:["How",Fs.value!==100||Ar.value||Bs.value?":":""," ",[Fs.value!==100?`${Fs.value} %`:"",Ar.value?"clicks":"",Bs.value?"repeated":""].filter(Boolean).join(", ")]}),c("div",{children:[c("label",{children:["Speed ",c("input",{type:"range",min:fd,max:pd,step:5,value:Fs.value,"aria-valuetext":`${Fs.value} percent`,onInput:l=>Ce.setPace(Number(l.currentTarget.value))})," ",Fs.value," %"]}),c("label",{children:[c("input",{type:"checkbox",checked:Ar.value,onChange:l=>Ce.setClicks(l.currentTarget.checked)})," Click on every count"]}),c("label",{children:[c("input",{type:"checkbox",onChange:l=>Ce.player&&(Ce.player.countIn=l.currentTarget.checked)})," A bar of counting first"]}),c("button",{type:"button",class:"small","aria-pressed":Bs.value!==null,disabled:!a&&!Bs.value,onClick:()=>Ce.setRepeat(Bs.value?null:[a.start,a.end]),children:Bs.value?"Repeat no more":`Repeat ${a?.name??"the section"}`})]})]})]})}var Er=n=>`${Math.floor(n/60)}:${String(Math.floor(n%60)).padStart(2,"0")}`;var yd=8,Ex=400,Cx=400,Yn=Mt([]),Xo=Mt(null),ug=null,xd=0,hg=0;_n(()=>{let n=nt.value?.revision;n!==void 0&&ln.peek()&&ri.peek()?.revision!==n&&cd()});function $l(n){if(hg=performance.now(),!Di.value){Yn.value=[],Xo.value=null,Ce.toggle(),xe.value="The song plays: tap on each beat.";return}ug=Ce.clock.latency?.()??null,Yn.value=[...Yn.value,Ce.clock.at?.(n)??Ce.clock.now()],clearTimeout(xd),Yn.value.length>=yd&&(xd=window.setTimeout(()=>{Rx()},Ex))}async function Rx(){let n=Yn.value;try{let t=await ge("taps",{taps:n,latency:ug});if(Yn.value!==n)return;Xo.value=t,xe.value=t.words.join(" ")}catch(t){Yn.value===n&&(xe.value=t instanceof Me?t.message:"The program behind this page does not answer.")}}function Px(){clearTimeout(xd),Yn.value=[],Xo.value=null,xe.value="The taps are forgotten."}function Ix(){let n=Yn.value.length,t=Xo.value;return c("section",{"aria-labelledby":"count-tap",children:[c("h3",{id:"count-tap",children:"Tap along"}),c("p",{class:"quiet",children:"Press once, and the song plays; then tap on each beat you feel, eight times or more. Your first tap is taken for a one."}),c("p",{class:"row",children:[c("button",{type:"button",class:"tap","aria-keyshortcuts":"T",onPointerDown:e=>e.button===0&&$l(e.timeStamp),onKeyDown:e=>{e.key!==" "&&e.key!=="Enter"||(e.preventDefault(),e.stopPropagation(),e.repeat||$l(e.timeStamp))},onClick:e=>e.detail===0&&performance.now()-hg>Cx&&$l(e.timeStamp),children:[Di.value?"Tap":"Play and tap"," ",c("kbd",{children:"T"}),c("b",{children:n?n<yd?`${n} of ${yd}`:`${n} taps`:""})]}),c("button",{type:"button",disabled:!n,onClick:Px,children:"Start over"})]}),t&&c("div",{class:"found",children:[t.words.map(e=>c("p",{children:e},e)),t.offers.map(e=>c("p",{children:c("button",{type:"button",onClick:()=>Ni(e.values,e.words),children:e.words})},e.words)),!t.offers.length&&c("p",{class:"quiet",children:"Nothing needs to be changed."})]})]})}function Dx(n){let t=Di.value?Ce.clock.at?.(n)??Ce.clock.now():Ue.value;return Math.round(rs.value.beatAt(t))}function bd(n){let t=rs.value;if(!t)return;let e=Dx(n);Ni({one:ks(t.secondsAt(e))},`The one is at ${ks(t.secondsAt(e))} now.`)}function lg(n){let t=rs.value;if(!t)return;let{bar:e}=t.position(Math.max(t.beatAt(Ue.value),0)+1e-6),i=ks(t.secondsAt(t.barStart(Math.max(e,1))+n));Ni({one:i},n<0?"The one is a beat earlier now.":"The one is a beat later now.")}var vd=["half",null,"double"];function cg(n){let t=Mr("steady");if(t){let i=Number(t.tempo)*2**n;return i>=20&&i<=400?{steady:{tempo:Math.round(i*1e3)/1e3,at:t.at}}:null}let e=vd.indexOf(Mr("tempo")??null)+n;return e in vd?{tempo:vd[e]}:null}function Lx(){let n=ri.value,t=rs.value;if(!t)return null;let e=t.secondsAt(0),i=n&&ln.value?n.bpm:Ux(t.times),s=Mr("metre"),r=cg(-1),o=cg(1),a=Ox(Mr("shift")),l=["metre","one","tempo","shift","beats","steady"].filter(u=>Mr(u)!==null);return c("section",{"aria-labelledby":"count-is",children:[c("h3",{id:"count-is",children:"The count"}),c("p",{class:"tells",children:[c("b",{children:i.toFixed(1)})," beats a minute, ",c("b",{children:t.metre})," to the bar, bar 1 at ",ks(Math.max(0,e)),". ",l.length?"":"Nothing of it is corrected."]}),c("p",{class:"row",children:[c("button",{type:"button","aria-keyshortcuts":"1",onPointerDown:u=>u.button===0&&Nx(u.timeStamp),onClick:u=>u.detail===0?bd(u.timeStamp):bd(dg),children:["This is one ",c("kbd",{children:"1"})]}),c("button",{type:"button",onClick:()=>lg(-1),children:"One a beat earlier"}),c("button",{type:"button",onClick:()=>lg(1),children:"One a beat later"})]}),c("p",{class:"row",children:[c("button",{type:"button",disabled:!r,onClick:()=>r&&Ni(r,"Half as fast."),children:"Half as fast"}),c("button",{type:"button",disabled:!o,onClick:()=>o&&Ni(o,"Twice as fast."),children:"Twice as fast"}),c("label",{children:["Beats a bar ",c("select",{value:String(s??""),onChange:u=>Ni({metre:u.currentTarget.value?Number(u.currentTarget.value):null},"Another metre."),children:[c("option",{value:"",children:"as heard"}),[2,3,4,5,6,7].map(u=>c("option",{value:String(u),children:u},u))]})]}),c("label",{children:["Later by ",c("input",{type:"number",step:5,min:-2e3,max:2e3,value:a,onChange:u=>Ni({shift:Number(u.currentTarget.value)?`${Math.round(Number(u.currentTarget.value))} ms`:null},"All beats moved.")})," ms"]})]}),c("p",{class:"row",children:[c("label",{children:[c("input",{type:"checkbox",checked:Ar.value,onChange:u=>Ce.setClicks(u.currentTarget.checked)})," Click on every count, higher on the one"]}),l.length>0&&c("button",{type:"button",class:"small",onClick:()=>Ni(Object.fromEntries(l.map(u=>[u,null])),"The count is as it was detected again."),children:"Back to what was heard"})]})]})}var dg=0,Nx=n=>dg=n;function Ux(n){let t=Math.min(8,n.length-1),e=n.slice(t).map((i,s)=>i-n[s]).sort((i,s)=>i-s);return 60*t/e[Math.floor(e.length/2)]}function Ox(n){let t=/^\s*(-?[\d.]+)\s*(ms|s)?\s*$/.exec(String(n??""));return t?Math.round(Number(t[1])*(t[2]==="ms"?1:1e3)):0}function kx(){let n=dd(),t=rs.value;if(!t||!ft.value)return null;let e=hd(n.map(h=>h.name)),i=(h,d,p)=>zl(n.map((f,g)=>g===h?{...f,...d}:f),p),s=(h,d,p)=>{let f=h>0?n[h-1].seconds+.1:0,g=h+1<n.length?n[h+1].seconds-.1:ft.value.duration-.1;d>f&&d<g?i(h,{start:Sr(d),seconds:d},p):xe.value="There is another section already."},r=h=>t.position(t.beatAt(h)+.001).bar,o=h=>{let{bar:d,beat:p,inBar:f}=t.position(t.beatAt(h)+.001);return t.secondsAt(t.barStart(p-1<f/2?d:d+1))},a=o(Ue.value),l=n.filter(h=>h.seconds<=a+.05).length-1,u=()=>{if(l>=0&&a-n[l].seconds<.1){xe.value="A section begins here already.";return}let h={start:Sr(a),name:"new",was:null,seconds:a};zl([...n.slice(0,l+1),h,...n.slice(l+1)],`A section begins at ${h.start}.`)};return c("section",{"aria-labelledby":"count-parts",children:[c("h3",{id:"count-parts",children:"Sections"}),c("p",{class:"quiet",children:"Give parts that come back the same name; they are numbered then. A section lasts until the next one."}),c("ol",{class:"borders",children:n.map((h,d)=>c("li",{children:[c("label",{children:[c("span",{class:"unseen",children:["Name of the section from ",h.start]}),c("input",{type:"text",list:"section-names",value:h.name,onChange:p=>p.currentTarget.value.trim()&&i(d,{name:p.currentTarget.value.trim()},`Now called ${p.currentTarget.value.trim()}.`)})]}),c("button",{type:"button",class:"small",title:"Go there",onClick:()=>Ce.seek(h.seconds),children:d?`from ${h.start}`:"from the start"}),d>0&&c("span",{role:"group","aria-label":`${e[d]} begins`,children:[c("button",{type:"button",class:"small","aria-label":`${e[d]} a bar earlier`,onClick:()=>s(d,t.secondsAt(t.barStart(r(h.seconds)-(o(h.seconds)<h.seconds-.02?0:1))),"A bar earlier."),children:"\u2039 bar"}),c("button",{type:"button",class:"small","aria-label":`${e[d]} a bar later`,onClick:()=>s(d,t.secondsAt(t.barStart(r(h.seconds)+1)),"A bar later."),children:"bar \u203A"}),c("button",{type:"button",class:"small","aria-label":`${e[d]} begins here, where the song is`,onClick:()=>s(d,a,`It begins at ${Sr(a)}.`),children:"here"}),c("button",{type:"button",class:"small","aria-label":`Join ${e[d]} with the section before it`,onClick:()=>zl(n.filter((p,f)=>f!==d),`${e[d]} is joined with ${e[d-1]}.`),children:"join"})]})]},d))}),c("datalist",{id:"section-names",children:[...new Set(["intro","verse","chorus","bridge","break","outro",...n.map(h=>h.name)])].map(h=>c("option",{value:h},h))}),c("p",{class:"row",children:c("button",{type:"button",onClick:u,children:["Split at ",Sr(a)]})})]})}function Fx(){let n=ln.value,t=ri.value;if(!n)return null;let e=async()=>{await Lt(eg(n),"The count is set.")&&(ld(),Yn.value=[],Xo.value=null)};return c("section",{class:"thought","aria-labelledby":"count-so",children:[c("h3",{id:"count-so",children:"Not written yet"}),t?Bx(t).map(i=>c("p",{children:i},i)):c("p",{class:"quiet",children:Ho.value?"Looking what it moves \u2026":""}),t&&t.blocks&&t.blocks.told.length>0&&c("ul",{children:[t.blocks.told.map(i=>c("li",{children:[i.before," ",i.title," (",i.who.join(", "),"): ",i.before===i.after?"":`${i.after} now, `,"from ",$o(i.before_s)," to ",$o(i.after_s),Math.abs(i.longer_s)>.05?`, ${Math.abs(i.longer_s).toFixed(1)} s ${i.longer_s>0?"longer":"shorter"}`:""]},`${i.before} ${i.who.join()}`)),t.blocks.told.reduce((i,s)=>i+s.who.length,0)<t.blocks.moved&&c("li",{children:"\u2026 and others"})]}),t?.trouble&&c("p",{class:"fault",children:["On this count the show cannot be danced as it is written: ",In(t.trouble)]}),c("p",{class:"row",children:[c("button",{type:"button",class:"main",disabled:!tg.value,onClick:()=>{e()},children:"Set it so"}),c("button",{type:"button",onClick:()=>{ld(),xe.value="As it was."},children:"Leave it as it was"})]})]})}var $o=n=>`${Math.floor(Math.max(n,0)/60)}:${(Math.max(n,0)%60).toFixed(1).padStart(4,"0")}`,_d=(n,t)=>`${n} ${t}${n===1?"":"s"}`;function Bx(n){let t=[],{beats:e,ones:i,blocks:s}=n;if(e&&(e.moved||e.gone||e.come)){let o=[[e.same,"stays where it is","stay where they are"],[e.moved,"moves a little","move a little"],[e.gone,"is left out","are left out"],[e.come,"is new","are new"]].filter(([a])=>a).map(([a,l,u],h)=>`${h?a:_d(a,"beat")} ${a===1?l:u}`);t.push(`${[o.slice(0,-1).join(", "),o[o.length-1]].filter(Boolean).join(" and ")}.`)}else i&&(i.moved||i.gone||i.come)?t.push(`The beats stay; ${_d(i.moved+i.gone,"one")} ${i.moved+i.gone===1?"is":"are"} elsewhere.`):e&&t.push("All beats and ones stay.");for(let r of n.borders)r.before_s===null?t.push(`${r.name} begins at ${$o(r.after_s)}.`):r.after_s===null?t.push(`There is no ${r.name} any more.`):t.push(`${r.name} begins at ${$o(r.after_s)} instead of ${$o(r.before_s)}.`);return n.held&&t.push(`The sections begin where they did in the song, and are counted anew: ${n.held.map(([r,o])=>`${o} from ${r}`).join(", ")}.`),s?.moved?t.push(`What is written in bars and counts keeps them, and so sounds elsewhere: ${_d(s.moved,"move")}, by up to ${s.most_s.toFixed(1)} s. ${s.same?`${s.same} stay.`:""}`):s&&t.push("Nothing that is danced moves."),t}function zx(n){let t=n.target;if(n.ctrlKey||n.metaKey||n.altKey||n.repeat||t.matches("input:not([type=checkbox]), select, textarea"))return;let e={t:()=>$l(n.timeStamp),1:()=>bd(n.timeStamp)}[n.key.toLowerCase()];e&&(n.preventDefault(),e())}function fg(){return ft.value?c("div",{class:"counting",onKeyDown:zx,children:[c(Ix,{}),c(Lx,{}),c(kx,{}),c(Fx,{}),c("p",{class:"quiet",children:["Heard in ",Wo.value&&is.value?.track,": ",Er(ft.value.duration),". What a loudspeaker without wires adds to the delay no program knows; if all clicks come late there, use one with a wire."]})]}):c("p",{class:"quiet",children:nt.value?.readable?"The song is not counted yet.":"The file cannot be read: mend it under Text."})}function pg({row:n,seconds:[t,e]}){let i=ln.value?rs.value:null;if(!i&&!Yn.value.length)return null;let s=a=>100*(a-t)/(e-t),r=[];if(i)for(let a=Math.ceil(i.beatAt(t)-1e-6);i.secondsAt(a)<e-1e-6&&r.length<64;a++)r.push({at:i.secondsAt(a),one:Math.floor(i.position(a+1e-6).beat)===1});let o=Yn.value.filter(a=>a>=t&&a<e);return c("svg",{class:"marks",viewBox:"0 0 100 10",preserveAspectRatio:"none","aria-hidden":"true","data-bar":n.bar,children:[r.map(({at:a,one:l})=>c("path",{class:l?"one":"beat",d:`M${s(a).toFixed(2)} ${l?0:3}V10`},a)),o.map((a,l)=>c("path",{class:"tapped",d:`M${s(a).toFixed(2)} 0V3`},`tap ${l}`))]})}var Zn=Uint8Array,Cr=Uint16Array,Vx=Int32Array,mg=new Zn([0,0,0,0,0,0,0,0,1,1,1,1,2,2,2,2,3,3,3,3,4,4,4,4,5,5,5,5,0,0,0,0]),gg=new Zn([0,0,0,0,1,1,2,2,3,3,4,4,5,5,6,6,7,7,8,8,9,9,10,10,11,11,12,12,13,13,0,0]),Gx=new Zn([16,17,18,0,8,7,9,6,10,5,11,4,12,3,13,2,14,1,15]),vg=function(n,t){for(var e=new Cr(31),i=0;i<31;++i)e[i]=t+=1<<n[i-1];for(var s=new Vx(e[30]),i=1;i<30;++i)for(var r=e[i];r<e[i+1];++r)s[r]=r-e[i]<<5|i;return{b:e,r:s}},_g=vg(mg,2),yg=_g.b,Hx=_g.r;yg[28]=258,Hx[258]=28;var xg=vg(gg,0),Wx=xg.b,pP=xg.r,Sd=new Cr(32768);for(ce=0;ce<32768;++ce)Oi=(ce&43690)>>1|(ce&21845)<<1,Oi=(Oi&52428)>>2|(Oi&13107)<<2,Oi=(Oi&61680)>>4|(Oi&3855)<<4,Sd[ce]=((Oi&65280)>>8|(Oi&255)<<8)>>1;var Oi,ce,qo=(function(n,t,e){for(var i=n.length,s=0,r=new Cr(t);s<i;++s)n[s]&&++r[n[s]-1];var o=new Cr(t);for(s=1;s<t;++s)o[s]=o[s-1]+r[s-1]<<1;var a;if(e){a=new Cr(1<<t);var l=15-t;for(s=0;s<i;++s)if(n[s])for(var u=s<<4|n[s],h=t-n[s],d=o[n[s]-1]++<<h,p=d|(1<<h)-1;d<=p;++d)a[Sd[d]>>l]=u}else for(a=new Cr(i),s=0;s<i;++s)n[s]&&(a[s]=Sd[o[n[s]-1]++]>>15-n[s]);return a}),Yo=new Zn(288);for(ce=0;ce<144;++ce)Yo[ce]=8;var ce;for(ce=144;ce<256;++ce)Yo[ce]=9;var ce;for(ce=256;ce<280;++ce)Yo[ce]=7;var ce;for(ce=280;ce<288;++ce)Yo[ce]=8;var ce,bg=new Zn(32);for(ce=0;ce<32;++ce)bg[ce]=5;var ce;var $x=qo(Yo,9,1);var Xx=qo(bg,5,1),wd=function(n){for(var t=n[0],e=1;e<n.length;++e)n[e]>t&&(t=n[e]);return t},oi=function(n,t,e){var i=t/8|0;return(n[i]|n[i+1]<<8)>>(t&7)&e},Md=function(n,t){var e=t/8|0;return(n[e]|n[e+1]<<8|n[e+2]<<16)>>(t&7)},qx=function(n){return(n+7)/8|0},Yx=function(n,t,e){return(t==null||t<0)&&(t=0),(e==null||e>n.length)&&(e=n.length),new Zn(n.subarray(t,e))};var Zx=["unexpected EOF","invalid block type","invalid length/literal","invalid distance","stream finished","no stream handler",,"no callback","invalid UTF-8 data","extra field too long","date not in range 1980-2099","filename too long","stream finishing","invalid zip data"],ki=function(n,t,e){var i=new Error(t||Zx[n]);if(i.code=n,Error.captureStackTrace&&Error.captureStackTrace(i,ki),!e)throw i;return i},Jx=function(n,t,e,i){var s=n.length,r=i?i.length:0;if(!s||t.f&&!t.l)return e||new Zn(0);var o=!e,a=o||t.i!=2,l=t.i;o&&(e=new Zn(s*3));var u=function(Ut){var ae=e.length;if(Ut>ae){var he=new Zn(Math.max(ae*2,Ut));he.set(e),e=he}},h=t.f||0,d=t.p||0,p=t.b||0,f=t.l,g=t.d,_=t.m,v=t.n,m=s*8;do{if(!f){h=oi(n,d,1);var y=oi(n,d+1,3);if(d+=3,y)if(y==1)f=$x,g=Xx,_=9,v=5;else if(y==2){var A=oi(n,d,31)+257,x=oi(n,d+10,15)+4,T=A+oi(n,d+5,31)+1;d+=14;for(var L=new Zn(T),R=new Zn(19),P=0;P<x;++P)R[Gx[P]]=oi(n,d+P*3,7);d+=x*3;for(var O=wd(R),B=(1<<O)-1,I=qo(R,O,1),P=0;P<T;){var W=I[oi(n,d,B)];d+=W&15;var M=W>>4;if(M<16)L[P++]=M;else{var $=0,F=0;for(M==16?(F=3+oi(n,d,3),d+=2,$=L[P-1]):M==17?(F=3+oi(n,d,7),d+=3):M==18&&(F=11+oi(n,d,127),d+=7);F--;)L[P++]=$}}var Q=L.subarray(0,A),G=L.subarray(A);_=wd(Q),v=wd(G),f=qo(Q,_,1),g=qo(G,v,1)}else ki(1);else{var M=qx(d)+4,b=n[M-4]|n[M-3]<<8,E=M+b;if(E>s){l&&ki(0);break}a&&u(p+b),e.set(n.subarray(M,E),p),t.b=p+=b,t.p=d=E*8,t.f=h;continue}if(d>m){l&&ki(0);break}}a&&u(p+131072);for(var tt=(1<<_)-1,et=(1<<v)-1,St=d;;St=d){var $=f[Md(n,d)&tt],Ot=$>>4;if(d+=$&15,d>m){l&&ki(0);break}if($||ki(2),Ot<256)e[p++]=Ot;else if(Ot==256){St=d,f=null;break}else{var Z=Ot-254;if(Ot>264){var P=Ot-257,gt=mg[P];Z=oi(n,d,(1<<gt)-1)+yg[P],d+=gt}var wt=g[Md(n,d)&et],It=wt>>4;wt||ki(3),d+=wt&15;var G=Wx[It];if(It>3){var gt=gg[It];G+=Md(n,d)&(1<<gt)-1,d+=gt}if(d>m){l&&ki(0);break}a&&u(p+131072);var _t=p+Z;if(p<G){var zt=r-G,Le=Math.min(G,_t);for(zt+p<0&&ki(3);p<Le;++p)e[p]=i[zt+p]}for(;p<_t;++p)e[p]=e[p-G]}}t.l=f,t.p=St,t.b=p,t.f=h,f&&(h=1,t.m=_,t.d=g,t.n=v)}while(!h);return p!=e.length&&o?Yx(e,0,p):e.subarray(0,p)};var Kx=new Zn(0);function wg(n,t){return Jx(n,{i:2},t&&t.out,t&&t.dictionary)}var jx=typeof TextDecoder<"u"&&new TextDecoder,Qx=0;try{jx.decode(Kx,{stream:!0}),Qx=1}catch{}var Xl=class{constructor(t,e){this.head=t;this.samples=e;this.channels=t.steps.length,this.offsets=new Int32Array(t.intervals.length);let i=0;t.intervals.forEach((s,r)=>{this.offsets[r]=i,i+=this.channels*(s+2+3+1)})}head;samples;offsets;channels;read(t,e,i=this.channels){let{head:s,samples:r}=this,o=(t-s.start)/8,a=Math.min(Math.max(Math.floor(o),0),s.intervals.length-1),l=s.intervals[a],u=Math.min(Math.max(o-a,0),1)*l,h=Math.min(Math.floor(u),l-1),d=u-h,p=d+2,f=d+1,g=d-1,_=d-2,v=d-3,m=-f*d*g*_*v/120,y=p*d*g*_*v/24,M=-p*f*g*_*v/12,b=p*f*d*_*v/12,E=-p*f*d*g*v/24,A=p*f*d*g*_/120,x=l+2+3+1,T=this.offsets[a]+h;for(let L=0;L<i;L++,T+=x)e[L]=s.bases[L]+s.steps[L]*(m*r[T]+y*r[T+1]+M*r[T+2]+b*r[T+3]+E*r[T+4]+A*r[T+5])}};var zs=["left","right"];function tb(n){let t=atob(n.trim()),e=new Uint8Array(t.length);for(let i=0;i<t.length;i++)e[i]=t.charCodeAt(i);return e}function Tg(n){let t=wg(tb(n.keys)),e=t.length/2,i=0,s=o=>{let a=o.steps.length,l=0;for(let d of o.intervals)l+=a*(d+2+3+1);let u=new Int16Array(l),h=0;for(let d of o.intervals){let p=d+2+3+1;for(let f=0;f<a;f++){let g=0,_=0;for(let v=0;v<p;v++,i++){let m=t[i]|t[e+i]<<8,y=m>>>1^-(m&1);v===0?_=y:(g=v===1?y:g+y,_+=g),_=_<<16>>16,u[h++]=_}}}return new Xl(o,u)},r=o=>{let a={floor:s(o.floor)};for(let l of zs){let u=o[l];u&&(a[l]=s(u))}return a};return n.cast.map(o=>{let a=r(o.tracks);return o.drawn&&(a.drawn=r(o.drawn)),a})}function Ag(n,t,e){if(!n?.length)return void e.fill(0);let i=0;for(;i<n.length-1&&n[i+1][0]<=t;)i++;let s=n[Math.min(i+1,n.length-1)],r=s[0]-n[i][1],o=r>0?Math.min(Math.max((t-n[i][1])/r,0),1):0,a=o*o*o*(10-15*o+6*o*o);for(let l=0;l<5;l++)e[l]=n[i][l+2]+a*(s[l+2]-n[i][l+2])}function Vs([n,t,e]){let i=Math.cos(n),s=Math.sin(n),r=Math.cos(t),o=Math.sin(t),a=Math.cos(e),l=Math.sin(e);return[i*a+s*o*l,-s*r,i*l-s*o*a,s*a-i*o*l,i*r,s*l+i*o*a,-r*l,-o,r*a]}function Eg(n){return eb(Vs(n),Vs([0,n[3],n[4],0,0]))}function eb(n,t){return Array.from({length:9},(e,i)=>{let s=i-i%3,r=i%3;return n[s]*t[r]+n[s+1]*t[r+3]+n[s+2]*t[r+6]})}function Ad(n,t,e,i,s){return s[0]=n[0]*t+n[1]*e+n[2]*i,s[1]=n[3]*t+n[4]*e+n[5]*i,s[2]=n[6]*t+n[7]*e+n[8]*i,s}function Gs(n,t,e,i){return Ad(Vs(t),e[0],e[1],e[2]-n.hips,i),i[2]+=n.hips,i}function Rr(n,t,e,i){return Ad(Vs([0,t[3],t[4],0,0]),e[0],e[1],e[2]-n.shoulder,i),i[2]+=n.shoulder,Gs(n,t,[...i],i)}function nb(n,t,e,i){return Gs(n,t,[e==="left"?-n.halfShoulder:n.halfShoulder,0,n.shoulder],i)}function Cg(n,t,e,i){let s=nb(n,t,e,[0,0,0]),r=Vs(t),o=[i[0]-s[0],i[1]-s[1],i[2]-s[2]],a=[0,1,2].map(M=>r[M]*o[0]+r[M+3]*o[1]+r[M+6]*o[2]),l=Td(a,a)-n.arm**2;if(l<=0)return[0,0,0];let[u,h,d,p]=n.give,f=e==="left"?-1:1,_=[Math.min(Math.max(f*a[0],-u),0)*f,Math.min(Math.max(a[1],-h),d),Math.min(Math.max(a[2],0),p)],v=Td(_,_),m=Td(_,a),y=v>0?Math.min(Math.max((m-Math.sqrt(Math.max(m*m-v*l,0)))/v,0),1):0;return Ad(r,y*_[0],y*_[1],y*_[2],[0,0,0])}function Td(n,t){return n[0]*t[0]+n[1]*t[1]+n[2]*t[2]}function Cd(){let n=()=>({left:[0,0,0],right:[0,0,0]});return{x:0,y:0,cos:1,sin:0,hand:n(),tether:n(),across:n(),plane:n(),bodyHand:n(),bodyPlane:n(),angles:[0,0,0,0,0]}}var ve=new Float64Array(9),Zo=[0,0,0],Ed=[0,0,0];function ql(n,t,e,i){let s=Math.hypot(n,t,e)||1;return i[0]=n/s,i[1]=t/s,i[2]=e/s,i}function Rg(n,t){return[n[1]*t[2]-n[2]*t[1],n[2]*t[0]-n[0]*t[2],n[0]*t[1]-n[1]*t[0]]}function Zl(n,t,e,i){let s=n.hand[t],r=n.tether[t],o=n.across[t];for(let a=0;a<3;a++)i[a]=s[a]+e[0]*r[a]+e[1]*o[a];return i}function Jl(n){return n.heads.slice(0,n.kind==="staff"?2:1)}var Yl=class{constructor(t,e){this.entry=t;this.own=e}entry;own;drawn=!1;get tracks(){return this.drawn&&this.own.drawn||this.own}stand(t,e){this.tracks.floor.read(t,ve);let i=Math.hypot(ve[2],ve[3]);e.x=ve[0],e.y=ve[1],e.cos=ve[2]/i,e.sin=ve[3]/i}turn(t,e,i){let s=e[0],r=e[1];i[0]=-t.cos*s+t.sin*r,i[1]=-t.sin*s-t.cos*r,i[2]=e[2]}toStage(t,e,i){this.turn(t,e,i),i[0]+=t.x,i[1]+=t.y}at(t,e){this.stand(t,e),Ag(this.entry.carriage,t,e.angles);for(let i of zs){let s=this.tracks[i],r=this.entry.props[i];if(!s||!r)continue;s.read(t,ve);let o=e.bodyHand[i];o[0]=ve[0],o[1]=ve[1],o[2]=ve[2],this.turn(e,ql(ve[3],ve[4],ve[5],Zo),e.tether[i]);let a=Math.hypot(ve[6],ve[7],ve[8])||1,l=e.bodyPlane[i];l[0]=ve[6]/a,l[1]=ve[7]/a,l[2]=ve[8]/a,this.turn(e,l,e.plane[i]),this.toStage(e,o,e.hand[i]),this.turn(e,ql(...Rg(l,Zo),Ed),e.across[i])}}headAt(t,e,i,s,r){let o=this.tracks[e];if(o){this.stand(t,i),o.read(t,ve,r[1]===0?6:9),ql(ve[3],ve[4],ve[5],Zo),r[1]!==0&&ql(...Rg([ve[6],ve[7],ve[8]],Zo),Ed);for(let a=0;a<3;a++)s[a]=ve[a]+r[0]*Zo[a]+(r[1]&&r[1]*Ed[a]);this.toStage(i,s,s)}}};var xs={LEFT:0,MIDDLE:1,RIGHT:2,ROTATE:0,DOLLY:1,PAN:2},bs={ROTATE:0,PAN:1,DOLLY_PAN:2,DOLLY_ROTATE:3},m0=0,hf=1,g0=2;var Ga=1,v0=2,ro=3,ws=0,wn=1,pn=2,Js=0,oo=1,Ms=2,df=3,ff=4,_0=5;var Ks=100,y0=101,x0=102,b0=103,w0=104,M0=200,S0=201,T0=202,A0=203,pf=204,mf=205,E0=206,C0=207,R0=208,P0=209,I0=210,D0=211,L0=212,N0=213,U0=214,Ac=0,Ec=1,Cc=2,Xr=3,Rc=4,Pc=5,Ic=6,Dc=7,uu=0,O0=1,k0=2,wi=0,gf=1,vf=2,_f=3,yf=4,xf=5,bf=6,wf=7;var Mf=300,js=301,ao=302,hu=303,du=304,Lc=1e3,gi=1001,Nc=1002,tn=1003,F0=1004;var Ha=1005;var bn=1006,fu=1007;var Yi=1008;var Rn=1009,Sf=1010,Tf=1011,lo=1012,pu=1013,hi=1014,jn=1015,di=1016,mu=1017,gu=1018,Qs=1020,Af=35902,Ef=35899,Cf=1021,Rf=1022,fi=1023,Wi=1026,Zi=1027,vu=1028,_u=1029,Ss=1030,yu=1031;var xu=1033,Wa=33776,$a=33777,Xa=33778,qa=33779,bu=35840,wu=35841,Mu=35842,Su=35843,Tu=36196,Au=37492,Eu=37496,Cu=37488,Ru=37489,Ya=37490,Pu=37491,Iu=37808,Du=37809,Lu=37810,Nu=37811,Uu=37812,Ou=37813,ku=37814,Fu=37815,Bu=37816,zu=37817,Vu=37818,Gu=37819,Hu=37820,Wu=37821,$u=36492,Xu=36494,qu=36495,Yu=36283,Zu=36284,Za=36285,Ju=36286;var ca=2300,Uc=2301,Sc=2302,Qd=2303,tf=2400,ef=2401,nf=2402;var B0=3200;var Ku=0,z0=1,Ji="",kn="srgb",ua="srgb-linear",ha="linear",de="srgb";var Tc=7680;var V0=519,G0=512,H0=513,W0=514,Pf=515,$0=516,X0=517,If=518,Df=519,q0=35044,Ts=35048;var Lf="300 es",Kn=2e3,qr=2001;function ib(n){for(let t=n.length-1;t>=0;--t)if(n[t]>=65535)return!0;return!1}function sb(n){return ArrayBuffer.isView(n)&&!(n instanceof DataView)}function da(n){return document.createElementNS("http://www.w3.org/1999/xhtml",n)}function Y0(){let n=da("canvas");return n.style.display="block",n}var Pg={},Yr=null;function Nf(...n){let t="THREE."+n.shift();Yr?Yr("log",t,...n):console.log(t,...n)}function Z0(n){let t=n[0];if(typeof t=="string"&&t.startsWith("TSL:")){let e=n[1];e&&e.isStackTrace?n[0]+=" "+e.getLocation():n[1]='Stack trace not available. Enable "THREE.Node.captureStackTrace" to capture stack traces.'}return n}function Nt(...n){n=Z0(n);let t="THREE."+n.shift();if(Yr)Yr("warn",t,...n);else{let e=n[0];e&&e.isStackTrace?console.warn(e.getError(t)):console.warn(t,...n)}}function Bt(...n){n=Z0(n);let t="THREE."+n.shift();if(Yr)Yr("error",t,...n);else{let e=n[0];e&&e.isStackTrace?console.error(e.getError(t)):console.error(t,...n)}}function sa(...n){let t=n.join(" ");t in Pg||(Pg[t]=!0,Nt(...n))}function J0(n,t,e){return new Promise(function(i,s){function r(){switch(n.clientWaitSync(t,n.SYNC_FLUSH_COMMANDS_BIT,0)){case n.WAIT_FAILED:s();break;case n.TIMEOUT_EXPIRED:setTimeout(r,e);break;default:i()}}setTimeout(r,e)})}var K0={[Ac]:Ac,[Cc]:Ic,[Rc]:Rc,[Xr]:Pc,[Ec]:Ec,[Ic]:Cc,[Dc]:Dc,[Pc]:Xr},ui=class{addEventListener(t,e){this._listeners===void 0&&(this._listeners={});let i=this._listeners;i[t]===void 0&&(i[t]=[]),i[t].indexOf(e)===-1&&i[t].push(e)}hasEventListener(t,e){let i=this._listeners;return i===void 0?!1:i[t]!==void 0&&i[t].indexOf(e)!==-1}removeEventListener(t,e){let i=this._listeners;if(i===void 0)return;let s=i[t];if(s!==void 0){let r=s.indexOf(e);r!==-1&&s.splice(r,1)}}dispatchEvent(t){let e=this._listeners;if(e===void 0)return;let i=e[t.type];if(i!==void 0){t.target=this;let s=i.slice(0);for(let r=0,o=s.length;r<o;r++)s[r].call(this,t);t.target=null}}},dn=["00","01","02","03","04","05","06","07","08","09","0a","0b","0c","0d","0e","0f","10","11","12","13","14","15","16","17","18","19","1a","1b","1c","1d","1e","1f","20","21","22","23","24","25","26","27","28","29","2a","2b","2c","2d","2e","2f","30","31","32","33","34","35","36","37","38","39","3a","3b","3c","3d","3e","3f","40","41","42","43","44","45","46","47","48","49","4a","4b","4c","4d","4e","4f","50","51","52","53","54","55","56","57","58","59","5a","5b","5c","5d","5e","5f","60","61","62","63","64","65","66","67","68","69","6a","6b","6c","6d","6e","6f","70","71","72","73","74","75","76","77","78","79","7a","7b","7c","7d","7e","7f","80","81","82","83","84","85","86","87","88","89","8a","8b","8c","8d","8e","8f","90","91","92","93","94","95","96","97","98","99","9a","9b","9c","9d","9e","9f","a0","a1","a2","a3","a4","a5","a6","a7","a8","a9","aa","ab","ac","ad","ae","af","b0","b1","b2","b3","b4","b5","b6","b7","b8","b9","ba","bb","bc","bd","be","bf","c0","c1","c2","c3","c4","c5","c6","c7","c8","c9","ca","cb","cc","cd","ce","cf","d0","d1","d2","d3","d4","d5","d6","d7","d8","d9","da","db","dc","dd","de","df","e0","e1","e2","e3","e4","e5","e6","e7","e8","e9","ea","eb","ec","ed","ee","ef","f0","f1","f2","f3","f4","f5","f6","f7","f8","f9","fa","fb","fc","fd","fe","ff"],Ig=1234567,ra=Math.PI/180,Zr=180/Math.PI;function tr(){let n=Math.random()*4294967295|0,t=Math.random()*4294967295|0,e=Math.random()*4294967295|0,i=Math.random()*4294967295|0;return(dn[n&255]+dn[n>>8&255]+dn[n>>16&255]+dn[n>>24&255]+"-"+dn[t&255]+dn[t>>8&255]+"-"+dn[t>>16&15|64]+dn[t>>24&255]+"-"+dn[e&63|128]+dn[e>>8&255]+"-"+dn[e>>16&255]+dn[e>>24&255]+dn[i&255]+dn[i>>8&255]+dn[i>>16&255]+dn[i>>24&255]).toLowerCase()}function Yt(n,t,e){return Math.max(t,Math.min(e,n))}function Uf(n,t){return(n%t+t)%t}function rb(n,t,e,i,s){return i+(n-t)*(s-i)/(e-t)}function ob(n,t,e){return n!==t?(e-n)/(t-n):0}function oa(n,t,e){return(1-e)*n+e*t}function ab(n,t,e,i){return oa(n,t,1-Math.exp(-e*i))}function lb(n,t=1){return t-Math.abs(Uf(n,t*2)-t)}function cb(n,t,e){return n<=t?0:n>=e?1:(n=(n-t)/(e-t),n*n*(3-2*n))}function ub(n,t,e){return n<=t?0:n>=e?1:(n=(n-t)/(e-t),n*n*n*(n*(n*6-15)+10))}function hb(n,t){return n+Math.floor(Math.random()*(t-n+1))}function db(n,t){return n+Math.random()*(t-n)}function fb(n){return n*(.5-Math.random())}function pb(n){n!==void 0&&(Ig=n);let t=Ig+=1831565813;return t=Math.imul(t^t>>>15,t|1),t^=t+Math.imul(t^t>>>7,t|61),((t^t>>>14)>>>0)/4294967296}function mb(n){return n*ra}function gb(n){return n*Zr}function vb(n){return n>0&&Number.isInteger(n)&&2**Math.round(Math.log2(n))===n}function _b(n){return Math.pow(2,Math.ceil(Math.log(n)/Math.LN2))}function Of(n){return Math.pow(2,Math.floor(Math.log(n)/Math.LN2))}function yb(n,t,e,i,s){let r=Math.cos,o=Math.sin,a=r(e/2),l=o(e/2),u=r((t+i)/2),h=o((t+i)/2),d=r((t-i)/2),p=o((t-i)/2),f=r((i-t)/2),g=o((i-t)/2);switch(s){case"XYX":n.set(a*h,l*d,l*p,a*u);break;case"YZY":n.set(l*p,a*h,l*d,a*u);break;case"ZXZ":n.set(l*d,l*p,a*h,a*u);break;case"XZX":n.set(a*h,l*g,l*f,a*u);break;case"YXY":n.set(l*f,a*h,l*g,a*u);break;case"ZYZ":n.set(l*g,l*f,a*h,a*u);break;default:Nt("MathUtils: .setQuaternionFromProperEuler() encountered an unknown order: "+s)}}function kf(n){switch(n.constructor){case Uint32Array:return 4294967295;case Uint16Array:return 65535;case Uint8Array:case Uint8ClampedArray:return 255;case Int32Array:return 2147483647;case Int16Array:return 32767;case Int8Array:return 127;default:return}}function j0(n,t){if(t.constructor===Float32Array)return n;let e=kf(t);if(e===void 0)throw new Error("THREE.MathUtils: Invalid component type.");return Math.max(n/e,-1)}function Q0(n,t){if(t.constructor===Float32Array)return n;let e=kf(t);if(e===void 0)throw new Error("THREE.MathUtils: Invalid component type.");return Math.round(n*e)}var ju={DEG2RAD:ra,RAD2DEG:Zr,generateUUID:tr,clamp:Yt,euclideanModulo:Uf,mapLinear:rb,inverseLerp:ob,lerp:oa,damp:ab,pingpong:lb,smoothstep:cb,smootherstep:ub,randInt:hb,randFloat:db,randFloatSpread:fb,seededRandom:pb,degToRad:mb,radToDeg:gb,isPowerOfTwo:vb,ceilPowerOfTwo:_b,floorPowerOfTwo:Of,setQuaternionFromProperEuler:yb,normalize:Q0,denormalize:j0},at=class{static{this.prototype.isVector2=!0}constructor(t=0,e=0){this.x=t,this.y=e}get width(){return this.x}set width(t){this.x=t}get height(){return this.y}set height(t){this.y=t}set(t,e){return this.x=t,this.y=e,this}setScalar(t){return this.x=t,this.y=t,this}setX(t){return this.x=t,this}setY(t){return this.y=t,this}setComponent(t,e){switch(t){case 0:this.x=e;break;case 1:this.y=e;break;default:throw new Error("THREE.Vector2: index is out of range: "+t)}return this}getComponent(t){switch(t){case 0:return this.x;case 1:return this.y;default:throw new Error("THREE.Vector2: index is out of range: "+t)}}clone(){return new this.constructor(this.x,this.y)}copy(t){return this.x=t.x,this.y=t.y,this}add(t){return this.x+=t.x,this.y+=t.y,this}addScalar(t){return this.x+=t,this.y+=t,this}addVectors(t,e){return this.x=t.x+e.x,this.y=t.y+e.y,this}addScaledVector(t,e){return this.x+=t.x*e,this.y+=t.y*e,this}sub(t){return this.x-=t.x,this.y-=t.y,this}subScalar(t){return this.x-=t,this.y-=t,this}subVectors(t,e){return this.x=t.x-e.x,this.y=t.y-e.y,this}multiply(t){return this.x*=t.x,this.y*=t.y,this}multiplyScalar(t){return this.x*=t,this.y*=t,this}divide(t){return this.x/=t.x,this.y/=t.y,this}divideScalar(t){return this.multiplyScalar(1/t)}applyMatrix3(t){let e=this.x,i=this.y,s=t.elements;return this.x=s[0]*e+s[3]*i+s[6],this.y=s[1]*e+s[4]*i+s[7],this}min(t){return this.x=Math.min(this.x,t.x),this.y=Math.min(this.y,t.y),this}max(t){return this.x=Math.max(this.x,t.x),this.y=Math.max(this.y,t.y),this}clamp(t,e){return this.x=Yt(this.x,t.x,e.x),this.y=Yt(this.y,t.y,e.y),this}clampScalar(t,e){return this.x=Yt(this.x,t,e),this.y=Yt(this.y,t,e),this}clampLength(t,e){let i=this.length();return this.divideScalar(i||1).multiplyScalar(Yt(i,t,e))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this}negate(){return this.x=-this.x,this.y=-this.y,this}dot(t){return this.x*t.x+this.y*t.y}cross(t){return this.x*t.y-this.y*t.x}lengthSq(){return this.x*this.x+this.y*this.y}length(){return Math.sqrt(this.x*this.x+this.y*this.y)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)}normalize(){return this.divideScalar(this.length()||1)}angle(){return Math.atan2(-this.y,-this.x)+Math.PI}angleTo(t){let e=Math.sqrt(this.lengthSq()*t.lengthSq());if(e===0)return Math.PI/2;let i=this.dot(t)/e;return Math.acos(Yt(i,-1,1))}distanceTo(t){return Math.sqrt(this.distanceToSquared(t))}distanceToSquared(t){let e=this.x-t.x,i=this.y-t.y;return e*e+i*i}manhattanDistanceTo(t){return Math.abs(this.x-t.x)+Math.abs(this.y-t.y)}setLength(t){return this.normalize().multiplyScalar(t)}lerp(t,e){return this.x+=(t.x-this.x)*e,this.y+=(t.y-this.y)*e,this}lerpVectors(t,e,i){return this.x=t.x+(e.x-t.x)*i,this.y=t.y+(e.y-t.y)*i,this}equals(t){return t.x===this.x&&t.y===this.y}fromArray(t,e=0){return this.x=t[e],this.y=t[e+1],this}toArray(t=[],e=0){return t[e]=this.x,t[e+1]=this.y,t}fromBufferAttribute(t,e){return this.x=t.getX(e),this.y=t.getY(e),this}rotateAround(t,e){let i=Math.cos(e),s=Math.sin(e),r=this.x-t.x,o=this.y-t.y;return this.x=r*i-o*s+t.x,this.y=r*s+o*i+t.y,this}random(){return this.x=Math.random(),this.y=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y}},Xe=class{constructor(t=0,e=0,i=0,s=1){this.isQuaternion=!0,this._x=t,this._y=e,this._z=i,this._w=s}static slerpFlat(t,e,i,s,r,o,a){let l=i[s+0],u=i[s+1],h=i[s+2],d=i[s+3],p=r[o+0],f=r[o+1],g=r[o+2],_=r[o+3];if(d!==_||l!==p||u!==f||h!==g){let v=l*p+u*f+h*g+d*_;v<0&&(p=-p,f=-f,g=-g,_=-_,v=-v);let m=1-a;if(v<.9995){let y=Math.acos(v),M=Math.sin(y);m=Math.sin(m*y)/M,a=Math.sin(a*y)/M,l=l*m+p*a,u=u*m+f*a,h=h*m+g*a,d=d*m+_*a}else{l=l*m+p*a,u=u*m+f*a,h=h*m+g*a,d=d*m+_*a;let y=1/Math.sqrt(l*l+u*u+h*h+d*d);l*=y,u*=y,h*=y,d*=y}}t[e]=l,t[e+1]=u,t[e+2]=h,t[e+3]=d}static multiplyQuaternionsFlat(t,e,i,s,r,o){let a=i[s],l=i[s+1],u=i[s+2],h=i[s+3],d=r[o],p=r[o+1],f=r[o+2],g=r[o+3];return t[e]=a*g+h*d+l*f-u*p,t[e+1]=l*g+h*p+u*d-a*f,t[e+2]=u*g+h*f+a*p-l*d,t[e+3]=h*g-a*d-l*p-u*f,t}get x(){return this._x}set x(t){this._x=t,this._onChangeCallback()}get y(){return this._y}set y(t){this._y=t,this._onChangeCallback()}get z(){return this._z}set z(t){this._z=t,this._onChangeCallback()}get w(){return this._w}set w(t){this._w=t,this._onChangeCallback()}set(t,e,i,s){return this._x=t,this._y=e,this._z=i,this._w=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._w)}copy(t){return this._x=t.x,this._y=t.y,this._z=t.z,this._w=t.w,this._onChangeCallback(),this}setFromEuler(t,e=!0){let i=t._x,s=t._y,r=t._z,o=t._order,a=Math.cos,l=Math.sin,u=a(i/2),h=a(s/2),d=a(r/2),p=l(i/2),f=l(s/2),g=l(r/2);switch(o){case"XYZ":this._x=p*h*d+u*f*g,this._y=u*f*d-p*h*g,this._z=u*h*g+p*f*d,this._w=u*h*d-p*f*g;break;case"YXZ":this._x=p*h*d+u*f*g,this._y=u*f*d-p*h*g,this._z=u*h*g-p*f*d,this._w=u*h*d+p*f*g;break;case"ZXY":this._x=p*h*d-u*f*g,this._y=u*f*d+p*h*g,this._z=u*h*g+p*f*d,this._w=u*h*d-p*f*g;break;case"ZYX":this._x=p*h*d-u*f*g,this._y=u*f*d+p*h*g,this._z=u*h*g-p*f*d,this._w=u*h*d+p*f*g;break;case"YZX":this._x=p*h*d+u*f*g,this._y=u*f*d+p*h*g,this._z=u*h*g-p*f*d,this._w=u*h*d-p*f*g;break;case"XZY":this._x=p*h*d-u*f*g,this._y=u*f*d-p*h*g,this._z=u*h*g+p*f*d,this._w=u*h*d+p*f*g;break;default:Nt("Quaternion: .setFromEuler() encountered an unknown order: "+o)}return e===!0&&this._onChangeCallback(),this}setFromAxisAngle(t,e){let i=e/2,s=Math.sin(i);return this._x=t.x*s,this._y=t.y*s,this._z=t.z*s,this._w=Math.cos(i),this._onChangeCallback(),this}setFromRotationMatrix(t){let e=t.elements,i=e[0],s=e[4],r=e[8],o=e[1],a=e[5],l=e[9],u=e[2],h=e[6],d=e[10],p=i+a+d;if(p>0){let f=.5/Math.sqrt(p+1);this._w=.25/f,this._x=(h-l)*f,this._y=(r-u)*f,this._z=(o-s)*f}else if(i>a&&i>d){let f=2*Math.sqrt(1+i-a-d);this._w=(h-l)/f,this._x=.25*f,this._y=(s+o)/f,this._z=(r+u)/f}else if(a>d){let f=2*Math.sqrt(1+a-i-d);this._w=(r-u)/f,this._x=(s+o)/f,this._y=.25*f,this._z=(l+h)/f}else{let f=2*Math.sqrt(1+d-i-a);this._w=(o-s)/f,this._x=(r+u)/f,this._y=(l+h)/f,this._z=.25*f}return this._onChangeCallback(),this}setFromUnitVectors(t,e){let i=t.dot(e)+1;return i<1e-8?(i=0,Math.abs(t.x)>Math.abs(t.z)?(this._x=-t.y,this._y=t.x,this._z=0,this._w=i):(this._x=0,this._y=-t.z,this._z=t.y,this._w=i)):(this._x=t.y*e.z-t.z*e.y,this._y=t.z*e.x-t.x*e.z,this._z=t.x*e.y-t.y*e.x,this._w=i),this.normalize()}angleTo(t){return 2*Math.acos(Math.abs(Yt(this.dot(t),-1,1)))}rotateTowards(t,e){let i=this.angleTo(t);if(i===0)return this;let s=Math.min(1,e/i);return this.slerp(t,s),this}identity(){return this.set(0,0,0,1)}invert(){return this.conjugate()}conjugate(){return this._x*=-1,this._y*=-1,this._z*=-1,this._onChangeCallback(),this}dot(t){return this._x*t._x+this._y*t._y+this._z*t._z+this._w*t._w}lengthSq(){return this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w}length(){return Math.sqrt(this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w)}normalize(){let t=this.length();return t===0?(this._x=0,this._y=0,this._z=0,this._w=1):(t=1/t,this._x=this._x*t,this._y=this._y*t,this._z=this._z*t,this._w=this._w*t),this._onChangeCallback(),this}multiply(t){return this.multiplyQuaternions(this,t)}premultiply(t){return this.multiplyQuaternions(t,this)}multiplyQuaternions(t,e){let i=t._x,s=t._y,r=t._z,o=t._w,a=e._x,l=e._y,u=e._z,h=e._w;return this._x=i*h+o*a+s*u-r*l,this._y=s*h+o*l+r*a-i*u,this._z=r*h+o*u+i*l-s*a,this._w=o*h-i*a-s*l-r*u,this._onChangeCallback(),this}slerp(t,e){let i=t._x,s=t._y,r=t._z,o=t._w,a=this.dot(t);a<0&&(i=-i,s=-s,r=-r,o=-o,a=-a);let l=1-e;if(a<.9995){let u=Math.acos(a),h=Math.sin(u);l=Math.sin(l*u)/h,e=Math.sin(e*u)/h,this._x=this._x*l+i*e,this._y=this._y*l+s*e,this._z=this._z*l+r*e,this._w=this._w*l+o*e,this._onChangeCallback()}else this._x=this._x*l+i*e,this._y=this._y*l+s*e,this._z=this._z*l+r*e,this._w=this._w*l+o*e,this.normalize();return this}slerpQuaternions(t,e,i){return this.copy(t).slerp(e,i)}random(){let t=2*Math.PI*Math.random(),e=2*Math.PI*Math.random(),i=Math.random(),s=Math.sqrt(1-i),r=Math.sqrt(i);return this.set(s*Math.sin(t),s*Math.cos(t),r*Math.sin(e),r*Math.cos(e))}equals(t){return t._x===this._x&&t._y===this._y&&t._z===this._z&&t._w===this._w}fromArray(t,e=0){return this._x=t[e],this._y=t[e+1],this._z=t[e+2],this._w=t[e+3],this._onChangeCallback(),this}toArray(t=[],e=0){return t[e]=this._x,t[e+1]=this._y,t[e+2]=this._z,t[e+3]=this._w,t}fromBufferAttribute(t,e){return this._x=t.getX(e),this._y=t.getY(e),this._z=t.getZ(e),this._w=t.getW(e),this._onChangeCallback(),this}toJSON(){return this.toArray()}_onChange(t){return this._onChangeCallback=t,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._w}},N=class{static{this.prototype.isVector3=!0}constructor(t=0,e=0,i=0){this.x=t,this.y=e,this.z=i}set(t,e,i){return i===void 0&&(i=this.z),this.x=t,this.y=e,this.z=i,this}setScalar(t){return this.x=t,this.y=t,this.z=t,this}setX(t){return this.x=t,this}setY(t){return this.y=t,this}setZ(t){return this.z=t,this}setComponent(t,e){switch(t){case 0:this.x=e;break;case 1:this.y=e;break;case 2:this.z=e;break;default:throw new Error("THREE.Vector3: index is out of range: "+t)}return this}getComponent(t){switch(t){case 0:return this.x;case 1:return this.y;case 2:return this.z;default:throw new Error("THREE.Vector3: index is out of range: "+t)}}clone(){return new this.constructor(this.x,this.y,this.z)}copy(t){return this.x=t.x,this.y=t.y,this.z=t.z,this}add(t){return this.x+=t.x,this.y+=t.y,this.z+=t.z,this}addScalar(t){return this.x+=t,this.y+=t,this.z+=t,this}addVectors(t,e){return this.x=t.x+e.x,this.y=t.y+e.y,this.z=t.z+e.z,this}addScaledVector(t,e){return this.x+=t.x*e,this.y+=t.y*e,this.z+=t.z*e,this}sub(t){return this.x-=t.x,this.y-=t.y,this.z-=t.z,this}subScalar(t){return this.x-=t,this.y-=t,this.z-=t,this}subVectors(t,e){return this.x=t.x-e.x,this.y=t.y-e.y,this.z=t.z-e.z,this}multiply(t){return this.x*=t.x,this.y*=t.y,this.z*=t.z,this}multiplyScalar(t){return this.x*=t,this.y*=t,this.z*=t,this}multiplyVectors(t,e){return this.x=t.x*e.x,this.y=t.y*e.y,this.z=t.z*e.z,this}applyEuler(t){return this.applyQuaternion(Dg.setFromEuler(t))}applyAxisAngle(t,e){return this.applyQuaternion(Dg.setFromAxisAngle(t,e))}applyMatrix3(t){let e=this.x,i=this.y,s=this.z,r=t.elements;return this.x=r[0]*e+r[3]*i+r[6]*s,this.y=r[1]*e+r[4]*i+r[7]*s,this.z=r[2]*e+r[5]*i+r[8]*s,this}applyNormalMatrix(t){return this.applyMatrix3(t).normalize()}applyMatrix4(t){let e=this.x,i=this.y,s=this.z,r=t.elements,o=1/(r[3]*e+r[7]*i+r[11]*s+r[15]);return this.x=(r[0]*e+r[4]*i+r[8]*s+r[12])*o,this.y=(r[1]*e+r[5]*i+r[9]*s+r[13])*o,this.z=(r[2]*e+r[6]*i+r[10]*s+r[14])*o,this}applyQuaternion(t){let e=this.x,i=this.y,s=this.z,r=t.x,o=t.y,a=t.z,l=t.w,u=2*(o*s-a*i),h=2*(a*e-r*s),d=2*(r*i-o*e);return this.x=e+l*u+o*d-a*h,this.y=i+l*h+a*u-r*d,this.z=s+l*d+r*h-o*u,this}project(t){return this.applyMatrix4(t.matrixWorldInverse).applyMatrix4(t.projectionMatrix)}unproject(t){return this.applyMatrix4(t.projectionMatrixInverse).applyMatrix4(t.matrixWorld)}transformDirection(t){let e=this.x,i=this.y,s=this.z,r=t.elements;return this.x=r[0]*e+r[4]*i+r[8]*s,this.y=r[1]*e+r[5]*i+r[9]*s,this.z=r[2]*e+r[6]*i+r[10]*s,this.normalize()}divide(t){return this.x/=t.x,this.y/=t.y,this.z/=t.z,this}divideScalar(t){return this.multiplyScalar(1/t)}min(t){return this.x=Math.min(this.x,t.x),this.y=Math.min(this.y,t.y),this.z=Math.min(this.z,t.z),this}max(t){return this.x=Math.max(this.x,t.x),this.y=Math.max(this.y,t.y),this.z=Math.max(this.z,t.z),this}clamp(t,e){return this.x=Yt(this.x,t.x,e.x),this.y=Yt(this.y,t.y,e.y),this.z=Yt(this.z,t.z,e.z),this}clampScalar(t,e){return this.x=Yt(this.x,t,e),this.y=Yt(this.y,t,e),this.z=Yt(this.z,t,e),this}clampLength(t,e){let i=this.length();return this.divideScalar(i||1).multiplyScalar(Yt(i,t,e))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this}dot(t){return this.x*t.x+this.y*t.y+this.z*t.z}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)}normalize(){return this.divideScalar(this.length()||1)}setLength(t){return this.normalize().multiplyScalar(t)}lerp(t,e){return this.x+=(t.x-this.x)*e,this.y+=(t.y-this.y)*e,this.z+=(t.z-this.z)*e,this}lerpVectors(t,e,i){return this.x=t.x+(e.x-t.x)*i,this.y=t.y+(e.y-t.y)*i,this.z=t.z+(e.z-t.z)*i,this}cross(t){return this.crossVectors(this,t)}crossVectors(t,e){let i=t.x,s=t.y,r=t.z,o=e.x,a=e.y,l=e.z;return this.x=s*l-r*a,this.y=r*o-i*l,this.z=i*a-s*o,this}projectOnVector(t){let e=t.lengthSq();if(e===0)return this.set(0,0,0);let i=t.dot(this)/e;return this.copy(t).multiplyScalar(i)}projectOnPlane(t){return Rd.copy(this).projectOnVector(t),this.sub(Rd)}reflect(t){return this.sub(Rd.copy(t).multiplyScalar(2*this.dot(t)))}angleTo(t){let e=Math.sqrt(this.lengthSq()*t.lengthSq());if(e===0)return Math.PI/2;let i=this.dot(t)/e;return Math.acos(Yt(i,-1,1))}distanceTo(t){return Math.sqrt(this.distanceToSquared(t))}distanceToSquared(t){let e=this.x-t.x,i=this.y-t.y,s=this.z-t.z;return e*e+i*i+s*s}manhattanDistanceTo(t){return Math.abs(this.x-t.x)+Math.abs(this.y-t.y)+Math.abs(this.z-t.z)}setFromSpherical(t){return this.setFromSphericalCoords(t.radius,t.phi,t.theta)}setFromSphericalCoords(t,e,i){let s=Math.sin(e)*t;return this.x=s*Math.sin(i),this.y=Math.cos(e)*t,this.z=s*Math.cos(i),this}setFromCylindrical(t){return this.setFromCylindricalCoords(t.radius,t.theta,t.y)}setFromCylindricalCoords(t,e,i){return this.x=t*Math.sin(e),this.y=i,this.z=t*Math.cos(e),this}setFromMatrixPosition(t){let e=t.elements;return this.x=e[12],this.y=e[13],this.z=e[14],this}setFromMatrixScale(t){let e=this.setFromMatrixColumn(t,0).length(),i=this.setFromMatrixColumn(t,1).length(),s=this.setFromMatrixColumn(t,2).length();return this.x=e,this.y=i,this.z=s,this}setFromMatrixColumn(t,e){return this.fromArray(t.elements,e*4)}setFromMatrix3Column(t,e){return this.fromArray(t.elements,e*3)}setFromEuler(t){return this.x=t._x,this.y=t._y,this.z=t._z,this}setFromColor(t){return this.x=t.r,this.y=t.g,this.z=t.b,this}equals(t){return t.x===this.x&&t.y===this.y&&t.z===this.z}fromArray(t,e=0){return this.x=t[e],this.y=t[e+1],this.z=t[e+2],this}toArray(t=[],e=0){return t[e]=this.x,t[e+1]=this.y,t[e+2]=this.z,t}fromBufferAttribute(t,e){return this.x=t.getX(e),this.y=t.getY(e),this.z=t.getZ(e),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this}randomDirection(){let t=Math.random()*Math.PI*2,e=Math.random()*2-1,i=Math.sqrt(1-e*e);return this.x=i*Math.cos(t),this.y=e,this.z=i*Math.sin(t),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z}},Rd=new N,Dg=new Xe,Gt=class{static{this.prototype.isMatrix3=!0}constructor(t,e,i,s,r,o,a,l,u){this.elements=[1,0,0,0,1,0,0,0,1],t!==void 0&&this.set(t,e,i,s,r,o,a,l,u)}set(t,e,i,s,r,o,a,l,u){let h=this.elements;return h[0]=t,h[1]=s,h[2]=a,h[3]=e,h[4]=r,h[5]=l,h[6]=i,h[7]=o,h[8]=u,this}identity(){return this.set(1,0,0,0,1,0,0,0,1),this}copy(t){let e=this.elements,i=t.elements;return e[0]=i[0],e[1]=i[1],e[2]=i[2],e[3]=i[3],e[4]=i[4],e[5]=i[5],e[6]=i[6],e[7]=i[7],e[8]=i[8],this}extractBasis(t,e,i){return t.setFromMatrix3Column(this,0),e.setFromMatrix3Column(this,1),i.setFromMatrix3Column(this,2),this}setFromMatrix4(t){let e=t.elements;return this.set(e[0],e[4],e[8],e[1],e[5],e[9],e[2],e[6],e[10]),this}multiply(t){return this.multiplyMatrices(this,t)}premultiply(t){return this.multiplyMatrices(t,this)}multiplyMatrices(t,e){let i=t.elements,s=e.elements,r=this.elements,o=i[0],a=i[3],l=i[6],u=i[1],h=i[4],d=i[7],p=i[2],f=i[5],g=i[8],_=s[0],v=s[3],m=s[6],y=s[1],M=s[4],b=s[7],E=s[2],A=s[5],x=s[8];return r[0]=o*_+a*y+l*E,r[3]=o*v+a*M+l*A,r[6]=o*m+a*b+l*x,r[1]=u*_+h*y+d*E,r[4]=u*v+h*M+d*A,r[7]=u*m+h*b+d*x,r[2]=p*_+f*y+g*E,r[5]=p*v+f*M+g*A,r[8]=p*m+f*b+g*x,this}multiplyScalar(t){let e=this.elements;return e[0]*=t,e[3]*=t,e[6]*=t,e[1]*=t,e[4]*=t,e[7]*=t,e[2]*=t,e[5]*=t,e[8]*=t,this}determinant(){let t=this.elements,e=t[0],i=t[1],s=t[2],r=t[3],o=t[4],a=t[5],l=t[6],u=t[7],h=t[8];return e*o*h-e*a*u-i*r*h+i*a*l+s*r*u-s*o*l}invert(){let t=this.elements,e=t[0],i=t[1],s=t[2],r=t[3],o=t[4],a=t[5],l=t[6],u=t[7],h=t[8],d=h*o-a*u,p=a*l-h*r,f=u*r-o*l,g=e*d+i*p+s*f;if(g===0)return this.set(0,0,0,0,0,0,0,0,0);let _=1/g;return t[0]=d*_,t[1]=(s*u-h*i)*_,t[2]=(a*i-s*o)*_,t[3]=p*_,t[4]=(h*e-s*l)*_,t[5]=(s*r-a*e)*_,t[6]=f*_,t[7]=(i*l-u*e)*_,t[8]=(o*e-i*r)*_,this}transpose(){let t,e=this.elements;return t=e[1],e[1]=e[3],e[3]=t,t=e[2],e[2]=e[6],e[6]=t,t=e[5],e[5]=e[7],e[7]=t,this}getNormalMatrix(t){return this.setFromMatrix4(t).invert().transpose()}transposeIntoArray(t){let e=this.elements;return t[0]=e[0],t[1]=e[3],t[2]=e[6],t[3]=e[1],t[4]=e[4],t[5]=e[7],t[6]=e[2],t[7]=e[5],t[8]=e[8],this}setUvTransform(t,e,i,s,r,o,a){let l=Math.cos(r),u=Math.sin(r);return this.set(i*l,i*u,-i*(l*o+u*a)+o+t,-s*u,s*l,-s*(-u*o+l*a)+a+e,0,0,1),this}scale(t,e){return sa("Matrix3: .scale() is deprecated. Use .makeScale() instead."),this.premultiply(Pd.makeScale(t,e)),this}rotate(t){return sa("Matrix3: .rotate() is deprecated. Use .makeRotation() instead."),this.premultiply(Pd.makeRotation(-t)),this}translate(t,e){return sa("Matrix3: .translate() is deprecated. Use .makeTranslation() instead."),this.premultiply(Pd.makeTranslation(t,e)),this}makeTranslation(t,e){return t.isVector2?this.set(1,0,t.x,0,1,t.y,0,0,1):this.set(1,0,t,0,1,e,0,0,1),this}makeRotation(t){let e=Math.cos(t),i=Math.sin(t);return this.set(e,-i,0,i,e,0,0,0,1),this}makeScale(t,e){return this.set(t,0,0,0,e,0,0,0,1),this}equals(t){let e=this.elements,i=t.elements;for(let s=0;s<9;s++)if(e[s]!==i[s])return!1;return!0}fromArray(t,e=0){for(let i=0;i<9;i++)this.elements[i]=t[i+e];return this}toArray(t=[],e=0){let i=this.elements;return t[e]=i[0],t[e+1]=i[1],t[e+2]=i[2],t[e+3]=i[3],t[e+4]=i[4],t[e+5]=i[5],t[e+6]=i[6],t[e+7]=i[7],t[e+8]=i[8],t}clone(){return new this.constructor().fromArray(this.elements)}},Pd=new Gt,Lg=new Gt().set(.4123908,.3575843,.1804808,.212639,.7151687,.0721923,.0193308,.1191948,.9505322),Ng=new Gt().set(3.2409699,-1.5373832,-.4986108,-.9692436,1.8759675,.0415551,.0556301,-.203977,1.0569715);function xb(){let n={enabled:!0,workingColorSpace:ua,spaces:{},convert:function(s,r,o){return this.enabled===!1||r===o||!r||!o||(this.spaces[r].transfer===de&&(s.r=Hi(s.r),s.g=Hi(s.g),s.b=Hi(s.b)),this.spaces[r].primaries!==this.spaces[o].primaries&&(s.applyMatrix3(this.spaces[r].toXYZ),s.applyMatrix3(this.spaces[o].fromXYZ)),this.spaces[o].transfer===de&&(s.r=Wr(s.r),s.g=Wr(s.g),s.b=Wr(s.b))),s},workingToColorSpace:function(s,r){return this.convert(s,this.workingColorSpace,r)},colorSpaceToWorking:function(s,r){return this.convert(s,r,this.workingColorSpace)},getPrimaries:function(s){return this.spaces[s].primaries},getTransfer:function(s){return s===Ji?ha:this.spaces[s].transfer},getToneMappingMode:function(s){return this.spaces[s].outputColorSpaceConfig.toneMappingMode||"standard"},getLuminanceCoefficients:function(s,r=this.workingColorSpace){return s.fromArray(this.spaces[r].luminanceCoefficients)},define:function(s){Object.assign(this.spaces,s)},_getMatrix:function(s,r,o){return s.copy(this.spaces[o].fromXYZ).multiply(this.spaces[r].toXYZ)},_getDrawingBufferColorSpace:function(s){return this.spaces[s].outputColorSpaceConfig.drawingBufferColorSpace},_getUnpackColorSpace:function(s=this.workingColorSpace){return this.spaces[s].workingColorSpaceConfig.unpackColorSpace}},t=[.64,.33,.3,.6,.15,.06],e=[.2126,.7152,.0722],i=[.3127,.329];return n.define({[ua]:{primaries:t,whitePoint:i,transfer:ha,toXYZ:Lg,fromXYZ:Ng,luminanceCoefficients:e,workingColorSpaceConfig:{unpackColorSpace:kn},outputColorSpaceConfig:{drawingBufferColorSpace:kn}},[kn]:{primaries:t,whitePoint:i,transfer:de,toXYZ:Lg,fromXYZ:Ng,luminanceCoefficients:e,outputColorSpaceConfig:{drawingBufferColorSpace:kn}}}),n}var ne=xb();function Hi(n){return n<.04045?n*.0773993808:Math.pow(n*.9478672986+.0521327014,2.4)}function Wr(n){return n<.0031308?n*12.92:1.055*Math.pow(n,.41666)-.055}var Pr,Oc=class{static getDataURL(t,e="image/png"){if(/^data:/i.test(t.src)||typeof HTMLCanvasElement>"u")return t.src;let i;if(t instanceof HTMLCanvasElement)i=t;else{Pr===void 0&&(Pr=da("canvas")),Pr.width=t.width,Pr.height=t.height;let s=Pr.getContext("2d");t instanceof ImageData?s.putImageData(t,0,0):s.drawImage(t,0,0,t.width,t.height),i=Pr}return i.toDataURL(e)}static sRGBToLinear(t){if(typeof HTMLImageElement<"u"&&t instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&t instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&t instanceof ImageBitmap){let e=da("canvas");e.width=t.width,e.height=t.height;let i=e.getContext("2d");i.drawImage(t,0,0,t.width,t.height);let s=i.getImageData(0,0,t.width,t.height),r=s.data;for(let o=0;o<r.length;o++)r[o]=Hi(r[o]/255)*255;return i.putImageData(s,0,0),e}else if(t.data){let e=t.data.slice(0);for(let i=0;i<e.length;i++)e instanceof Uint8Array||e instanceof Uint8ClampedArray?e[i]=Math.floor(Hi(e[i]/255)*255):e[i]=Hi(e[i]);return{data:e,width:t.width,height:t.height}}else return Nt("ImageUtils.sRGBToLinear(): Unsupported image type. No color space conversion applied."),t}},bb=0,Jr=class{constructor(t=null){this.isTextureSource=!0,Object.defineProperty(this,"id",{value:bb++}),this.uuid=tr(),this.data=t,this.dataReady=!0,this.version=0}getSize(t){let e=this.data;return typeof HTMLVideoElement<"u"&&e instanceof HTMLVideoElement?t.set(e.videoWidth,e.videoHeight,0):typeof VideoFrame<"u"&&e instanceof VideoFrame?t.set(e.displayWidth,e.displayHeight,0):e!==null?t.set(e.width||0,e.height||0,e.depth||0):t.set(0,0,0),t}set needsUpdate(t){t===!0&&this.version++}toJSON(t){let e=t===void 0||typeof t=="string";if(!e&&t.images[this.uuid]!==void 0)return t.images[this.uuid];let i={uuid:this.uuid,url:""},s=this.data;if(s!==null){let r;if(Array.isArray(s)){r=[];for(let o=0,a=s.length;o<a;o++)s[o].isDataTexture?r.push(Id(s[o].image)):r.push(Id(s[o]))}else r=Id(s);i.url=r}return e||(t.images[this.uuid]=i),i}};function Id(n){return typeof HTMLImageElement<"u"&&n instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&n instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&n instanceof ImageBitmap?Oc.getDataURL(n):n.data?{data:Array.from(n.data),width:n.width,height:n.height,type:n.data.constructor.name}:(Nt("Texture: Unable to serialize Texture."),{})}var wb=0,Dd=new N,En=class n extends ui{constructor(t=n.DEFAULT_IMAGE,e=n.DEFAULT_MAPPING,i=gi,s=gi,r=bn,o=Yi,a=fi,l=Rn,u=n.DEFAULT_ANISOTROPY,h=Ji){super(),this.isTexture=!0,Object.defineProperty(this,"id",{value:wb++}),this.uuid=tr(),this.name="",this.source=new Jr(t),this.mipmaps=[],this.mapping=e,this.channel=0,this.wrapS=i,this.wrapT=s,this.magFilter=r,this.minFilter=o,this.anisotropy=u,this.format=a,this.internalFormat=null,this.type=l,this.offset=new at(0,0),this.repeat=new at(1,1),this.center=new at(0,0),this.rotation=0,this.matrixAutoUpdate=!0,this.matrix=new Gt,this.generateMipmaps=!0,this.mipmapsAutoUpdate=!0,this.premultiplyAlpha=!1,this.flipY=!0,this.unpackAlignment=4,this.colorSpace=h,this.userData={},this.updateRanges=[],this.version=0,this.onUpdate=null,this.renderTarget=null,this.isRenderTargetTexture=!1,this.isArrayTexture=!!(t&&t.depth&&t.depth>1),this.pmremVersion=0,this.isPMREMTexture=!1,this.normalized=!1}get width(){return this.source.getSize(Dd).x}get height(){return this.source.getSize(Dd).y}get depth(){return this.source.getSize(Dd).z}get image(){return this.source.data}set image(t){this.source.data=t}updateMatrix(){this.matrix.setUvTransform(this.offset.x,this.offset.y,this.repeat.x,this.repeat.y,this.rotation,this.center.x,this.center.y)}addUpdateRange(t,e){this.updateRanges.push({start:t,count:e})}clearUpdateRanges(){this.updateRanges.length=0}clone(){return new this.constructor().copy(this)}copy(t){return this.name=t.name,this.source=t.source,this.mipmaps=t.mipmaps.slice(0),this.mapping=t.mapping,this.channel=t.channel,this.wrapS=t.wrapS,this.wrapT=t.wrapT,this.magFilter=t.magFilter,this.minFilter=t.minFilter,this.anisotropy=t.anisotropy,this.format=t.format,this.internalFormat=t.internalFormat,this.type=t.type,this.normalized=t.normalized,this.offset.copy(t.offset),this.repeat.copy(t.repeat),this.center.copy(t.center),this.rotation=t.rotation,this.matrixAutoUpdate=t.matrixAutoUpdate,this.matrix.copy(t.matrix),this.generateMipmaps=t.generateMipmaps,this.mipmapsAutoUpdate=t.mipmapsAutoUpdate,this.premultiplyAlpha=t.premultiplyAlpha,this.flipY=t.flipY,this.unpackAlignment=t.unpackAlignment,this.colorSpace=t.colorSpace,this.renderTarget=t.renderTarget,this.isRenderTargetTexture=t.isRenderTargetTexture,this.isPMREMTexture=t.isPMREMTexture,this.isArrayTexture=t.isArrayTexture,this.userData=JSON.parse(JSON.stringify(t.userData)),this.needsUpdate=!0,this}setValues(t){for(let e in t){let i=t[e];if(i===void 0){Nt(`Texture.setValues(): parameter '${e}' has value of undefined.`);continue}let s=this[e];if(s===void 0){Nt(`Texture.setValues(): property '${e}' does not exist.`);continue}s&&i&&s.isVector2&&i.isVector2||s&&i&&s.isVector3&&i.isVector3||s&&i&&s.isMatrix3&&i.isMatrix3?s.copy(i):this[e]=i}}toJSON(t){let e=t===void 0||typeof t=="string";if(!e&&t.textures[this.uuid]!==void 0)return t.textures[this.uuid];let i={metadata:{version:4.7,type:"Texture",generator:"Texture.toJSON"},uuid:this.uuid,name:this.name,image:this.source.toJSON(t).uuid,mapping:this.mapping,channel:this.channel,repeat:[this.repeat.x,this.repeat.y],offset:[this.offset.x,this.offset.y],center:[this.center.x,this.center.y],rotation:this.rotation,wrap:[this.wrapS,this.wrapT],format:this.format,internalFormat:this.internalFormat,type:this.type,normalized:this.normalized,colorSpace:this.colorSpace,minFilter:this.minFilter,magFilter:this.magFilter,anisotropy:this.anisotropy,flipY:this.flipY,generateMipmaps:this.generateMipmaps,mipmapsAutoUpdate:this.mipmapsAutoUpdate,premultiplyAlpha:this.premultiplyAlpha,unpackAlignment:this.unpackAlignment};return Object.keys(this.userData).length>0&&(i.userData=this.userData),e||(t.textures[this.uuid]=i),i}dispose(){this.dispatchEvent({type:"dispose"})}transformUv(t){if(this.mapping!==Mf)return t;if(t.applyMatrix3(this.matrix),t.x<0||t.x>1)switch(this.wrapS){case Lc:t.x=t.x-Math.floor(t.x);break;case gi:t.x=t.x<0?0:1;break;case Nc:Math.abs(Math.floor(t.x)%2)===1?t.x=Math.ceil(t.x)-t.x:t.x=t.x-Math.floor(t.x);break}if(t.y<0||t.y>1)switch(this.wrapT){case Lc:t.y=t.y-Math.floor(t.y);break;case gi:t.y=t.y<0?0:1;break;case Nc:Math.abs(Math.floor(t.y)%2)===1?t.y=Math.ceil(t.y)-t.y:t.y=t.y-Math.floor(t.y);break}return this.flipY&&(t.y=1-t.y),t}set needsUpdate(t){t===!0&&(this.version++,this.source.needsUpdate=!0)}set needsPMREMUpdate(t){t===!0&&this.pmremVersion++}};En.DEFAULT_IMAGE=null;En.DEFAULT_MAPPING=Mf;En.DEFAULT_ANISOTROPY=1;var Re=class{static{this.prototype.isVector4=!0}constructor(t=0,e=0,i=0,s=1){this.x=t,this.y=e,this.z=i,this.w=s}get width(){return this.z}set width(t){this.z=t}get height(){return this.w}set height(t){this.w=t}set(t,e,i,s){return this.x=t,this.y=e,this.z=i,this.w=s,this}setScalar(t){return this.x=t,this.y=t,this.z=t,this.w=t,this}setX(t){return this.x=t,this}setY(t){return this.y=t,this}setZ(t){return this.z=t,this}setW(t){return this.w=t,this}setComponent(t,e){switch(t){case 0:this.x=e;break;case 1:this.y=e;break;case 2:this.z=e;break;case 3:this.w=e;break;default:throw new Error("THREE.Vector4: index is out of range: "+t)}return this}getComponent(t){switch(t){case 0:return this.x;case 1:return this.y;case 2:return this.z;case 3:return this.w;default:throw new Error("THREE.Vector4: index is out of range: "+t)}}clone(){return new this.constructor(this.x,this.y,this.z,this.w)}copy(t){return this.x=t.x,this.y=t.y,this.z=t.z,this.w=t.w!==void 0?t.w:1,this}add(t){return this.x+=t.x,this.y+=t.y,this.z+=t.z,this.w+=t.w,this}addScalar(t){return this.x+=t,this.y+=t,this.z+=t,this.w+=t,this}addVectors(t,e){return this.x=t.x+e.x,this.y=t.y+e.y,this.z=t.z+e.z,this.w=t.w+e.w,this}addScaledVector(t,e){return this.x+=t.x*e,this.y+=t.y*e,this.z+=t.z*e,this.w+=t.w*e,this}sub(t){return this.x-=t.x,this.y-=t.y,this.z-=t.z,this.w-=t.w,this}subScalar(t){return this.x-=t,this.y-=t,this.z-=t,this.w-=t,this}subVectors(t,e){return this.x=t.x-e.x,this.y=t.y-e.y,this.z=t.z-e.z,this.w=t.w-e.w,this}multiply(t){return this.x*=t.x,this.y*=t.y,this.z*=t.z,this.w*=t.w,this}multiplyScalar(t){return this.x*=t,this.y*=t,this.z*=t,this.w*=t,this}applyMatrix4(t){let e=this.x,i=this.y,s=this.z,r=this.w,o=t.elements;return this.x=o[0]*e+o[4]*i+o[8]*s+o[12]*r,this.y=o[1]*e+o[5]*i+o[9]*s+o[13]*r,this.z=o[2]*e+o[6]*i+o[10]*s+o[14]*r,this.w=o[3]*e+o[7]*i+o[11]*s+o[15]*r,this}divide(t){return this.x/=t.x,this.y/=t.y,this.z/=t.z,this.w/=t.w,this}divideScalar(t){return this.multiplyScalar(1/t)}setAxisAngleFromQuaternion(t){this.w=2*Math.acos(t.w);let e=Math.sqrt(1-t.w*t.w);return e<1e-4?(this.x=1,this.y=0,this.z=0):(this.x=t.x/e,this.y=t.y/e,this.z=t.z/e),this}setAxisAngleFromRotationMatrix(t){let e,i,s,r,l=t.elements,u=l[0],h=l[4],d=l[8],p=l[1],f=l[5],g=l[9],_=l[2],v=l[6],m=l[10];if(Math.abs(h-p)<.01&&Math.abs(d-_)<.01&&Math.abs(g-v)<.01){if(Math.abs(h+p)<.1&&Math.abs(d+_)<.1&&Math.abs(g+v)<.1&&Math.abs(u+f+m-3)<.1)return this.set(1,0,0,0),this;e=Math.PI;let M=(u+1)/2,b=(f+1)/2,E=(m+1)/2,A=(h+p)/4,x=(d+_)/4,T=(g+v)/4;return M>b&&M>E?M<.01?(i=0,s=.707106781,r=.707106781):(i=Math.sqrt(M),s=A/i,r=x/i):b>E?b<.01?(i=.707106781,s=0,r=.707106781):(s=Math.sqrt(b),i=A/s,r=T/s):E<.01?(i=.707106781,s=.707106781,r=0):(r=Math.sqrt(E),i=x/r,s=T/r),this.set(i,s,r,e),this}let y=Math.sqrt((v-g)*(v-g)+(d-_)*(d-_)+(p-h)*(p-h));return Math.abs(y)<.001&&(y=1),this.x=(v-g)/y,this.y=(d-_)/y,this.z=(p-h)/y,this.w=Math.acos((u+f+m-1)/2),this}setFromMatrixPosition(t){let e=t.elements;return this.x=e[12],this.y=e[13],this.z=e[14],this.w=e[15],this}min(t){return this.x=Math.min(this.x,t.x),this.y=Math.min(this.y,t.y),this.z=Math.min(this.z,t.z),this.w=Math.min(this.w,t.w),this}max(t){return this.x=Math.max(this.x,t.x),this.y=Math.max(this.y,t.y),this.z=Math.max(this.z,t.z),this.w=Math.max(this.w,t.w),this}clamp(t,e){return this.x=Yt(this.x,t.x,e.x),this.y=Yt(this.y,t.y,e.y),this.z=Yt(this.z,t.z,e.z),this.w=Yt(this.w,t.w,e.w),this}clampScalar(t,e){return this.x=Yt(this.x,t,e),this.y=Yt(this.y,t,e),this.z=Yt(this.z,t,e),this.w=Yt(this.w,t,e),this}clampLength(t,e){let i=this.length();return this.divideScalar(i||1).multiplyScalar(Yt(i,t,e))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this.w=Math.floor(this.w),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this.w=Math.ceil(this.w),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this.w=Math.round(this.w),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this.w=Math.trunc(this.w),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this.w=-this.w,this}dot(t){return this.x*t.x+this.y*t.y+this.z*t.z+this.w*t.w}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)+Math.abs(this.w)}normalize(){return this.divideScalar(this.length()||1)}setLength(t){return this.normalize().multiplyScalar(t)}lerp(t,e){return this.x+=(t.x-this.x)*e,this.y+=(t.y-this.y)*e,this.z+=(t.z-this.z)*e,this.w+=(t.w-this.w)*e,this}lerpVectors(t,e,i){return this.x=t.x+(e.x-t.x)*i,this.y=t.y+(e.y-t.y)*i,this.z=t.z+(e.z-t.z)*i,this.w=t.w+(e.w-t.w)*i,this}equals(t){return t.x===this.x&&t.y===this.y&&t.z===this.z&&t.w===this.w}fromArray(t,e=0){return this.x=t[e],this.y=t[e+1],this.z=t[e+2],this.w=t[e+3],this}toArray(t=[],e=0){return t[e]=this.x,t[e+1]=this.y,t[e+2]=this.z,t[e+3]=this.w,t}fromBufferAttribute(t,e){return this.x=t.getX(e),this.y=t.getY(e),this.z=t.getZ(e),this.w=t.getW(e),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this.w=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z,yield this.w}},kc=class extends ui{constructor(t=1,e=1,i={}){super(),i=Object.assign({generateMipmaps:!1,internalFormat:null,minFilter:bn,depthBuffer:!0,stencilBuffer:!1,resolveColorBuffer:!0,resolveDepthBuffer:!0,resolveStencilBuffer:!0,storeMultisampledColorBuffer:!0,storeMultisampledDepthBuffer:!0,storeMultisampledStencilBuffer:!0,depthTexture:null,samples:0,count:1,depth:1,multiview:!1,useArrayDepthTexture:!1},i),this.isRenderTarget=!0,this.width=t,this.height=e,this.depth=i.depth,this.scissor=new Re(0,0,t,e),this.scissorTest=!1,this.viewport=new Re(0,0,t,e),this.textures=[];let s=i.count;for(let r=0;r<s;r++)this.textures[r]=new En({width:t,height:e,depth:i.depth}),this.textures[r].isRenderTargetTexture=!0,this.textures[r].renderTarget=this;this._setTextureOptions(i),this.depthBuffer=i.depthBuffer,this.stencilBuffer=i.stencilBuffer,this.resolveColorBuffer=i.resolveColorBuffer,this.resolveDepthBuffer=i.resolveDepthBuffer,this.resolveStencilBuffer=i.resolveStencilBuffer,this.storeMultisampledColorBuffer=i.storeMultisampledColorBuffer,this.storeMultisampledDepthBuffer=i.storeMultisampledDepthBuffer,this.storeMultisampledStencilBuffer=i.storeMultisampledStencilBuffer,this._depthTexture=null,this.depthTexture=i.depthTexture,this.samples=i.samples,this.multiview=i.multiview,this.useArrayDepthTexture=i.useArrayDepthTexture}_setTextureOptions(t={}){let e={minFilter:bn,generateMipmaps:!1,flipY:!1,internalFormat:null};t.mapping!==void 0&&(e.mapping=t.mapping),t.wrapS!==void 0&&(e.wrapS=t.wrapS),t.wrapT!==void 0&&(e.wrapT=t.wrapT),t.wrapR!==void 0&&(e.wrapR=t.wrapR),t.magFilter!==void 0&&(e.magFilter=t.magFilter),t.minFilter!==void 0&&(e.minFilter=t.minFilter),t.format!==void 0&&(e.format=t.format),t.type!==void 0&&(e.type=t.type),t.anisotropy!==void 0&&(e.anisotropy=t.anisotropy),t.colorSpace!==void 0&&(e.colorSpace=t.colorSpace),t.flipY!==void 0&&(e.flipY=t.flipY),t.generateMipmaps!==void 0&&(e.generateMipmaps=t.generateMipmaps),t.mipmapsAutoUpdate!==void 0&&(e.mipmapsAutoUpdate=t.mipmapsAutoUpdate),t.internalFormat!==void 0&&(e.internalFormat=t.internalFormat);for(let i=0;i<this.textures.length;i++)this.textures[i].setValues(e)}get texture(){return this.textures[0]}set texture(t){this.textures[0]=t}set depthTexture(t){this._depthTexture!==null&&this._depthTexture.renderTarget===this&&(this._depthTexture.renderTarget=null),t!==null&&t.renderTarget===null&&(t.renderTarget=this),this._depthTexture=t}get depthTexture(){return this._depthTexture}setSize(t,e,i=1){if(this.width!==t||this.height!==e||this.depth!==i){this.width=t,this.height=e,this.depth=i;for(let s=0,r=this.textures.length;s<r;s++)this.textures[s].image.width=t,this.textures[s].image.height=e,this.textures[s].image.depth=i,this.textures[s].isData3DTexture!==!0&&(this.textures[s].isArrayTexture=this.textures[s].image.depth>1);this.dispose()}this.viewport.set(0,0,t,e),this.scissor.set(0,0,t,e)}clone(){return new this.constructor().copy(this)}copy(t){this.width=t.width,this.height=t.height,this.depth=t.depth,this.scissor.copy(t.scissor),this.scissorTest=t.scissorTest,this.viewport.copy(t.viewport),this.textures.length=0;for(let e=0,i=t.textures.length;e<i;e++){this.textures[e]=t.textures[e].clone(),this.textures[e].isRenderTargetTexture=!0,this.textures[e].renderTarget=this;let s=Object.assign({},t.textures[e].image);this.textures[e].source=new Jr(s)}if(this.depthBuffer=t.depthBuffer,this.stencilBuffer=t.stencilBuffer,this.resolveColorBuffer=t.resolveColorBuffer,this.resolveDepthBuffer=t.resolveDepthBuffer,this.resolveStencilBuffer=t.resolveStencilBuffer,this.storeMultisampledColorBuffer=t.storeMultisampledColorBuffer,this.storeMultisampledDepthBuffer=t.storeMultisampledDepthBuffer,this.storeMultisampledStencilBuffer=t.storeMultisampledStencilBuffer,t.depthTexture!==null)if(t.depthTexture.renderTarget===t){let e=t.depthTexture.clone();e.renderTarget=null,this.depthTexture=e}else this.depthTexture=t.depthTexture;else this.depthTexture=null;return this.samples=t.samples,this.multiview=t.multiview,this.useArrayDepthTexture=t.useArrayDepthTexture,this}dispose(){this.dispatchEvent({type:"dispose"})}},Bn=class extends kc{constructor(t=1,e=1,i={}){super(t,e,i),this.isWebGLRenderTarget=!0}},fa=class extends En{constructor(t=null,e=1,i=1,s=1){super(null),this.isDataArrayTexture=!0,this.image={data:t,width:e,height:i,depth:s},this.magFilter=tn,this.minFilter=tn,this.wrapR=gi,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1,this.layerUpdates=new Set}copy(t){return super.copy(t),this.wrapR=t.wrapR,this}addLayerUpdate(t){this.layerUpdates.add(t)}clearLayerUpdates(){this.layerUpdates.clear()}};var Fc=class extends En{constructor(t=null,e=1,i=1,s=1){super(null),this.isData3DTexture=!0,this.image={data:t,width:e,height:i,depth:s},this.magFilter=tn,this.minFilter=tn,this.wrapR=gi,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1}copy(t){return super.copy(t),this.wrapR=t.wrapR,this}};var oe=class n{static{this.prototype.isMatrix4=!0}constructor(t,e,i,s,r,o,a,l,u,h,d,p,f,g,_,v){this.elements=[1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1],t!==void 0&&this.set(t,e,i,s,r,o,a,l,u,h,d,p,f,g,_,v)}set(t,e,i,s,r,o,a,l,u,h,d,p,f,g,_,v){let m=this.elements;return m[0]=t,m[4]=e,m[8]=i,m[12]=s,m[1]=r,m[5]=o,m[9]=a,m[13]=l,m[2]=u,m[6]=h,m[10]=d,m[14]=p,m[3]=f,m[7]=g,m[11]=_,m[15]=v,this}identity(){return this.set(1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1),this}clone(){return new n().fromArray(this.elements)}copy(t){let e=this.elements,i=t.elements;return e[0]=i[0],e[1]=i[1],e[2]=i[2],e[3]=i[3],e[4]=i[4],e[5]=i[5],e[6]=i[6],e[7]=i[7],e[8]=i[8],e[9]=i[9],e[10]=i[10],e[11]=i[11],e[12]=i[12],e[13]=i[13],e[14]=i[14],e[15]=i[15],this}copyPosition(t){let e=this.elements,i=t.elements;return e[12]=i[12],e[13]=i[13],e[14]=i[14],this}setFromMatrix3(t){let e=t.elements;return this.set(e[0],e[3],e[6],0,e[1],e[4],e[7],0,e[2],e[5],e[8],0,0,0,0,1),this}extractBasis(t,e,i){return this.determinantAffine()===0?(t.set(1,0,0),e.set(0,1,0),i.set(0,0,1),this):(t.setFromMatrixColumn(this,0),e.setFromMatrixColumn(this,1),i.setFromMatrixColumn(this,2),this)}makeBasis(t,e,i){return this.set(t.x,e.x,i.x,0,t.y,e.y,i.y,0,t.z,e.z,i.z,0,0,0,0,1),this}extractRotation(t){if(t.determinantAffine()===0)return this.identity();let e=this.elements,i=t.elements,s=1/Ir.setFromMatrixColumn(t,0).length(),r=1/Ir.setFromMatrixColumn(t,1).length(),o=1/Ir.setFromMatrixColumn(t,2).length();return e[0]=i[0]*s,e[1]=i[1]*s,e[2]=i[2]*s,e[3]=0,e[4]=i[4]*r,e[5]=i[5]*r,e[6]=i[6]*r,e[7]=0,e[8]=i[8]*o,e[9]=i[9]*o,e[10]=i[10]*o,e[11]=0,e[12]=0,e[13]=0,e[14]=0,e[15]=1,this}makeRotationFromEuler(t){let e=this.elements,i=t.x,s=t.y,r=t.z,o=Math.cos(i),a=Math.sin(i),l=Math.cos(s),u=Math.sin(s),h=Math.cos(r),d=Math.sin(r);if(t.order==="XYZ"){let p=o*h,f=o*d,g=a*h,_=a*d;e[0]=l*h,e[4]=-l*d,e[8]=u,e[1]=f+g*u,e[5]=p-_*u,e[9]=-a*l,e[2]=_-p*u,e[6]=g+f*u,e[10]=o*l}else if(t.order==="YXZ"){let p=l*h,f=l*d,g=u*h,_=u*d;e[0]=p+_*a,e[4]=g*a-f,e[8]=o*u,e[1]=o*d,e[5]=o*h,e[9]=-a,e[2]=f*a-g,e[6]=_+p*a,e[10]=o*l}else if(t.order==="ZXY"){let p=l*h,f=l*d,g=u*h,_=u*d;e[0]=p-_*a,e[4]=-o*d,e[8]=g+f*a,e[1]=f+g*a,e[5]=o*h,e[9]=_-p*a,e[2]=-o*u,e[6]=a,e[10]=o*l}else if(t.order==="ZYX"){let p=o*h,f=o*d,g=a*h,_=a*d;e[0]=l*h,e[4]=g*u-f,e[8]=p*u+_,e[1]=l*d,e[5]=_*u+p,e[9]=f*u-g,e[2]=-u,e[6]=a*l,e[10]=o*l}else if(t.order==="YZX"){let p=o*l,f=o*u,g=a*l,_=a*u;e[0]=l*h,e[4]=_-p*d,e[8]=g*d+f,e[1]=d,e[5]=o*h,e[9]=-a*h,e[2]=-u*h,e[6]=f*d+g,e[10]=p-_*d}else if(t.order==="XZY"){let p=o*l,f=o*u,g=a*l,_=a*u;e[0]=l*h,e[4]=-d,e[8]=u*h,e[1]=p*d+_,e[5]=o*h,e[9]=f*d-g,e[2]=g*d-f,e[6]=a*h,e[10]=_*d+p}return e[3]=0,e[7]=0,e[11]=0,e[12]=0,e[13]=0,e[14]=0,e[15]=1,this}makeRotationFromQuaternion(t){return this.compose(Mb,t,Sb)}lookAt(t,e,i){let s=this.elements;return Un.subVectors(t,e),Un.lengthSq()===0&&(Un.z=1),Un.normalize(),os.crossVectors(i,Un),os.lengthSq()===0&&(Math.abs(i.z)===1?Un.x+=1e-4:Un.z+=1e-4,Un.normalize(),os.crossVectors(i,Un)),os.normalize(),Kl.crossVectors(Un,os),s[0]=os.x,s[4]=Kl.x,s[8]=Un.x,s[1]=os.y,s[5]=Kl.y,s[9]=Un.y,s[2]=os.z,s[6]=Kl.z,s[10]=Un.z,this}multiply(t){return this.multiplyMatrices(this,t)}premultiply(t){return this.multiplyMatrices(t,this)}multiplyMatrices(t,e){let i=t.elements,s=e.elements,r=this.elements,o=i[0],a=i[4],l=i[8],u=i[12],h=i[1],d=i[5],p=i[9],f=i[13],g=i[2],_=i[6],v=i[10],m=i[14],y=i[3],M=i[7],b=i[11],E=i[15],A=s[0],x=s[4],T=s[8],L=s[12],R=s[1],P=s[5],O=s[9],B=s[13],I=s[2],W=s[6],$=s[10],F=s[14],Q=s[3],G=s[7],tt=s[11],et=s[15];return r[0]=o*A+a*R+l*I+u*Q,r[4]=o*x+a*P+l*W+u*G,r[8]=o*T+a*O+l*$+u*tt,r[12]=o*L+a*B+l*F+u*et,r[1]=h*A+d*R+p*I+f*Q,r[5]=h*x+d*P+p*W+f*G,r[9]=h*T+d*O+p*$+f*tt,r[13]=h*L+d*B+p*F+f*et,r[2]=g*A+_*R+v*I+m*Q,r[6]=g*x+_*P+v*W+m*G,r[10]=g*T+_*O+v*$+m*tt,r[14]=g*L+_*B+v*F+m*et,r[3]=y*A+M*R+b*I+E*Q,r[7]=y*x+M*P+b*W+E*G,r[11]=y*T+M*O+b*$+E*tt,r[15]=y*L+M*B+b*F+E*et,this}multiplyScalar(t){let e=this.elements;return e[0]*=t,e[4]*=t,e[8]*=t,e[12]*=t,e[1]*=t,e[5]*=t,e[9]*=t,e[13]*=t,e[2]*=t,e[6]*=t,e[10]*=t,e[14]*=t,e[3]*=t,e[7]*=t,e[11]*=t,e[15]*=t,this}determinant(){let t=this.elements,e=t[0],i=t[4],s=t[8],r=t[12],o=t[1],a=t[5],l=t[9],u=t[13],h=t[2],d=t[6],p=t[10],f=t[14],g=t[3],_=t[7],v=t[11],m=t[15],y=l*f-u*p,M=a*f-u*d,b=a*p-l*d,E=o*f-u*h,A=o*p-l*h,x=o*d-a*h;return e*(_*y-v*M+m*b)-i*(g*y-v*E+m*A)+s*(g*M-_*E+m*x)-r*(g*b-_*A+v*x)}determinantAffine(){let t=this.elements,e=t[0],i=t[4],s=t[8],r=t[1],o=t[5],a=t[9],l=t[2],u=t[6],h=t[10];return e*(o*h-a*u)-i*(r*h-a*l)+s*(r*u-o*l)}transpose(){let t=this.elements,e;return e=t[1],t[1]=t[4],t[4]=e,e=t[2],t[2]=t[8],t[8]=e,e=t[6],t[6]=t[9],t[9]=e,e=t[3],t[3]=t[12],t[12]=e,e=t[7],t[7]=t[13],t[13]=e,e=t[11],t[11]=t[14],t[14]=e,this}setPosition(t,e,i){let s=this.elements;return t.isVector3?(s[12]=t.x,s[13]=t.y,s[14]=t.z):(s[12]=t,s[13]=e,s[14]=i),this}invert(){let t=this.elements,e=t[0],i=t[1],s=t[2],r=t[3],o=t[4],a=t[5],l=t[6],u=t[7],h=t[8],d=t[9],p=t[10],f=t[11],g=t[12],_=t[13],v=t[14],m=t[15],y=e*a-i*o,M=e*l-s*o,b=e*u-r*o,E=i*l-s*a,A=i*u-r*a,x=s*u-r*l,T=h*_-d*g,L=h*v-p*g,R=h*m-f*g,P=d*v-p*_,O=d*m-f*_,B=p*m-f*v,I=y*B-M*O+b*P+E*R-A*L+x*T;if(I===0)return this.set(0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0);let W=1/I;return t[0]=(a*B-l*O+u*P)*W,t[1]=(s*O-i*B-r*P)*W,t[2]=(_*x-v*A+m*E)*W,t[3]=(p*A-d*x-f*E)*W,t[4]=(l*R-o*B-u*L)*W,t[5]=(e*B-s*R+r*L)*W,t[6]=(v*b-g*x-m*M)*W,t[7]=(h*x-p*b+f*M)*W,t[8]=(o*O-a*R+u*T)*W,t[9]=(i*R-e*O-r*T)*W,t[10]=(g*A-_*b+m*y)*W,t[11]=(d*b-h*A-f*y)*W,t[12]=(a*L-o*P-l*T)*W,t[13]=(e*P-i*L+s*T)*W,t[14]=(_*M-g*E-v*y)*W,t[15]=(h*E-d*M+p*y)*W,this}scale(t){let e=this.elements,i=t.x,s=t.y,r=t.z;return e[0]*=i,e[4]*=s,e[8]*=r,e[1]*=i,e[5]*=s,e[9]*=r,e[2]*=i,e[6]*=s,e[10]*=r,e[3]*=i,e[7]*=s,e[11]*=r,this}getMaxScaleOnAxis(){let t=this.elements,e=t[0]*t[0]+t[1]*t[1]+t[2]*t[2],i=t[4]*t[4]+t[5]*t[5]+t[6]*t[6],s=t[8]*t[8]+t[9]*t[9]+t[10]*t[10];return Math.sqrt(Math.max(e,i,s))}makeTranslation(t,e,i){return t.isVector3?this.set(1,0,0,t.x,0,1,0,t.y,0,0,1,t.z,0,0,0,1):this.set(1,0,0,t,0,1,0,e,0,0,1,i,0,0,0,1),this}makeRotationX(t){let e=Math.cos(t),i=Math.sin(t);return this.set(1,0,0,0,0,e,-i,0,0,i,e,0,0,0,0,1),this}makeRotationY(t){let e=Math.cos(t),i=Math.sin(t);return this.set(e,0,i,0,0,1,0,0,-i,0,e,0,0,0,0,1),this}makeRotationZ(t){let e=Math.cos(t),i=Math.sin(t);return this.set(e,-i,0,0,i,e,0,0,0,0,1,0,0,0,0,1),this}makeRotationAxis(t,e){let i=Math.cos(e),s=Math.sin(e),r=1-i,o=t.x,a=t.y,l=t.z,u=r*o,h=r*a;return this.set(u*o+i,u*a-s*l,u*l+s*a,0,u*a+s*l,h*a+i,h*l-s*o,0,u*l-s*a,h*l+s*o,r*l*l+i,0,0,0,0,1),this}makeScale(t,e,i){return this.set(t,0,0,0,0,e,0,0,0,0,i,0,0,0,0,1),this}makeShear(t,e,i,s,r,o){return this.set(1,i,r,0,t,1,o,0,e,s,1,0,0,0,0,1),this}compose(t,e,i){let s=this.elements,r=e._x,o=e._y,a=e._z,l=e._w,u=r+r,h=o+o,d=a+a,p=r*u,f=r*h,g=r*d,_=o*h,v=o*d,m=a*d,y=l*u,M=l*h,b=l*d,E=i.x,A=i.y,x=i.z;return s[0]=(1-(_+m))*E,s[1]=(f+b)*E,s[2]=(g-M)*E,s[3]=0,s[4]=(f-b)*A,s[5]=(1-(p+m))*A,s[6]=(v+y)*A,s[7]=0,s[8]=(g+M)*x,s[9]=(v-y)*x,s[10]=(1-(p+_))*x,s[11]=0,s[12]=t.x,s[13]=t.y,s[14]=t.z,s[15]=1,this}decompose(t,e,i){let s=this.elements;t.x=s[12],t.y=s[13],t.z=s[14];let r=this.determinantAffine();if(r===0)return i.set(1,1,1),e.identity(),this;let o=Ir.set(s[0],s[1],s[2]).length(),a=Ir.set(s[4],s[5],s[6]).length(),l=Ir.set(s[8],s[9],s[10]).length();r<0&&(o=-o),ai.copy(this);let u=1/o,h=1/a,d=1/l;return ai.elements[0]*=u,ai.elements[1]*=u,ai.elements[2]*=u,ai.elements[4]*=h,ai.elements[5]*=h,ai.elements[6]*=h,ai.elements[8]*=d,ai.elements[9]*=d,ai.elements[10]*=d,e.setFromRotationMatrix(ai),i.x=o,i.y=a,i.z=l,this}makePerspective(t,e,i,s,r,o,a=Kn,l=!1){let u=this.elements,h=2*r/(e-t),d=2*r/(i-s),p=(e+t)/(e-t),f=(i+s)/(i-s),g,_;if(l)g=r/(o-r),_=o*r/(o-r);else if(a===Kn)g=-(o+r)/(o-r),_=-2*o*r/(o-r);else if(a===qr)g=-o/(o-r),_=-o*r/(o-r);else throw new Error("THREE.Matrix4.makePerspective(): Invalid coordinate system: "+a);return u[0]=h,u[4]=0,u[8]=p,u[12]=0,u[1]=0,u[5]=d,u[9]=f,u[13]=0,u[2]=0,u[6]=0,u[10]=g,u[14]=_,u[3]=0,u[7]=0,u[11]=-1,u[15]=0,this}makeOrthographic(t,e,i,s,r,o,a=Kn,l=!1){let u=this.elements,h=2/(e-t),d=2/(i-s),p=-(e+t)/(e-t),f=-(i+s)/(i-s),g,_;if(l)g=1/(o-r),_=o/(o-r);else if(a===Kn)g=-2/(o-r),_=-(o+r)/(o-r);else if(a===qr)g=-1/(o-r),_=-r/(o-r);else throw new Error("THREE.Matrix4.makeOrthographic(): Invalid coordinate system: "+a);return u[0]=h,u[4]=0,u[8]=0,u[12]=p,u[1]=0,u[5]=d,u[9]=0,u[13]=f,u[2]=0,u[6]=0,u[10]=g,u[14]=_,u[3]=0,u[7]=0,u[11]=0,u[15]=1,this}equals(t){let e=this.elements,i=t.elements;for(let s=0;s<16;s++)if(e[s]!==i[s])return!1;return!0}fromArray(t,e=0){for(let i=0;i<16;i++)this.elements[i]=t[i+e];return this}toArray(t=[],e=0){let i=this.elements;return t[e]=i[0],t[e+1]=i[1],t[e+2]=i[2],t[e+3]=i[3],t[e+4]=i[4],t[e+5]=i[5],t[e+6]=i[6],t[e+7]=i[7],t[e+8]=i[8],t[e+9]=i[9],t[e+10]=i[10],t[e+11]=i[11],t[e+12]=i[12],t[e+13]=i[13],t[e+14]=i[14],t[e+15]=i[15],t}},Ir=new N,ai=new oe,Mb=new N(0,0,0),Sb=new N(1,1,1),os=new N,Kl=new N,Un=new N,Ug=new oe,Og=new Xe,$i=class n{constructor(t=0,e=0,i=0,s=n.DEFAULT_ORDER){this.isEuler=!0,this._x=t,this._y=e,this._z=i,this._order=s}get x(){return this._x}set x(t){this._x=t,this._onChangeCallback()}get y(){return this._y}set y(t){this._y=t,this._onChangeCallback()}get z(){return this._z}set z(t){this._z=t,this._onChangeCallback()}get order(){return this._order}set order(t){this._order=t,this._onChangeCallback()}set(t,e,i,s=this._order){return this._x=t,this._y=e,this._z=i,this._order=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._order)}copy(t){return this._x=t._x,this._y=t._y,this._z=t._z,this._order=t._order,this._onChangeCallback(),this}setFromRotationMatrix(t,e=this._order,i=!0){let s=t.elements,r=s[0],o=s[4],a=s[8],l=s[1],u=s[5],h=s[9],d=s[2],p=s[6],f=s[10];switch(e){case"XYZ":this._y=Math.asin(Yt(a,-1,1)),Math.abs(a)<.9999999?(this._x=Math.atan2(-h,f),this._z=Math.atan2(-o,r)):(this._x=Math.atan2(p,u),this._z=0);break;case"YXZ":this._x=Math.asin(-Yt(h,-1,1)),Math.abs(h)<.9999999?(this._y=Math.atan2(a,f),this._z=Math.atan2(l,u)):(this._y=Math.atan2(-d,r),this._z=0);break;case"ZXY":this._x=Math.asin(Yt(p,-1,1)),Math.abs(p)<.9999999?(this._y=Math.atan2(-d,f),this._z=Math.atan2(-o,u)):(this._y=0,this._z=Math.atan2(l,r));break;case"ZYX":this._y=Math.asin(-Yt(d,-1,1)),Math.abs(d)<.9999999?(this._x=Math.atan2(p,f),this._z=Math.atan2(l,r)):(this._x=0,this._z=Math.atan2(-o,u));break;case"YZX":this._z=Math.asin(Yt(l,-1,1)),Math.abs(l)<.9999999?(this._x=Math.atan2(-h,u),this._y=Math.atan2(-d,r)):(this._x=0,this._y=Math.atan2(a,f));break;case"XZY":this._z=Math.asin(-Yt(o,-1,1)),Math.abs(o)<.9999999?(this._x=Math.atan2(p,u),this._y=Math.atan2(a,r)):(this._x=Math.atan2(-h,f),this._y=0);break;default:Nt("Euler: .setFromRotationMatrix() encountered an unknown order: "+e)}return this._order=e,i===!0&&this._onChangeCallback(),this}setFromQuaternion(t,e,i){return Ug.makeRotationFromQuaternion(t),this.setFromRotationMatrix(Ug,e,i)}setFromVector3(t,e=this._order){return this.set(t.x,t.y,t.z,e)}reorder(t){return Og.setFromEuler(this),this.setFromQuaternion(Og,t)}equals(t){return t._x===this._x&&t._y===this._y&&t._z===this._z&&t._order===this._order}fromArray(t){return this._x=t[0],this._y=t[1],this._z=t[2],t[3]!==void 0&&(this._order=t[3]),this._onChangeCallback(),this}toArray(t=[],e=0){return t[e]=this._x,t[e+1]=this._y,t[e+2]=this._z,t[e+3]=this._order,t}_onChange(t){return this._onChangeCallback=t,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._order}};$i.DEFAULT_ORDER="XYZ";var pa=class{constructor(){this.mask=1}set(t){this.mask=(1<<t|0)>>>0}enable(t){this.mask|=1<<t|0}enableAll(){this.mask=-1}toggle(t){this.mask^=1<<t|0}disable(t){this.mask&=~(1<<t|0)}disableAll(){this.mask=0}test(t){return(this.mask&t.mask)!==0}isEnabled(t){return(this.mask&(1<<t|0))!==0}},Tb=0,kg=new N,Dr=new Xe,Fi=new oe,jl=new N,Jo=new N,Ab=new N,Eb=new Xe,Fg=new N(1,0,0),Bg=new N(0,1,0),zg=new N(0,0,1),Vg={type:"added"},Cb={type:"removed"},Lr={type:"childadded",child:null},Ld={type:"childremoved",child:null},en=class n extends ui{constructor(){super(),this.isObject3D=!0,Object.defineProperty(this,"id",{value:Tb++}),this.uuid=tr(),this.name="",this.type="Object3D",this.parent=null,this.children=[],this.up=n.DEFAULT_UP.clone();let t=new N,e=new $i,i=new Xe,s=new N(1,1,1);function r(){i.setFromEuler(e,!1)}function o(){e.setFromQuaternion(i,void 0,!1)}e._onChange(r),i._onChange(o),Object.defineProperties(this,{position:{configurable:!0,enumerable:!0,value:t},rotation:{configurable:!0,enumerable:!0,value:e},quaternion:{configurable:!0,enumerable:!0,value:i},scale:{configurable:!0,enumerable:!0,value:s},modelViewMatrix:{value:new oe},normalMatrix:{value:new Gt}}),this.matrix=new oe,this.matrixWorld=new oe,this.matrixAutoUpdate=n.DEFAULT_MATRIX_AUTO_UPDATE,this.matrixWorldAutoUpdate=n.DEFAULT_MATRIX_WORLD_AUTO_UPDATE,this.matrixWorldNeedsUpdate=!1,this.layers=new pa,this.visible=!0,this.castShadow=!1,this.receiveShadow=!1,this.frustumCulled=!0,this.renderOrder=0,this.animations=[],this.customDepthMaterial=void 0,this.customDistanceMaterial=void 0,this.static=!1,this.userData={},this.pivot=null}onBeforeShadow(){}onAfterShadow(){}onBeforeRender(){}onAfterRender(){}applyMatrix4(t){this.matrixAutoUpdate&&this.updateMatrix(),this.matrix.premultiply(t),this.matrix.decompose(this.position,this.quaternion,this.scale),this.pivot!==null&&this.position.copy(this.pivot).applyMatrix4(this.matrix).sub(this.pivot)}applyQuaternion(t){return this.quaternion.premultiply(t),this}setRotationFromAxisAngle(t,e){this.quaternion.setFromAxisAngle(t,e)}setRotationFromEuler(t){this.quaternion.setFromEuler(t,!0)}setRotationFromMatrix(t){this.quaternion.setFromRotationMatrix(t)}setRotationFromQuaternion(t){this.quaternion.copy(t)}rotateOnAxis(t,e){return Dr.setFromAxisAngle(t,e),this.quaternion.multiply(Dr),this}rotateOnWorldAxis(t,e){return Dr.setFromAxisAngle(t,e),this.quaternion.premultiply(Dr),this}rotateX(t){return this.rotateOnAxis(Fg,t)}rotateY(t){return this.rotateOnAxis(Bg,t)}rotateZ(t){return this.rotateOnAxis(zg,t)}translateOnAxis(t,e){return kg.copy(t).applyQuaternion(this.quaternion),this.position.add(kg.multiplyScalar(e)),this}translateX(t){return this.translateOnAxis(Fg,t)}translateY(t){return this.translateOnAxis(Bg,t)}translateZ(t){return this.translateOnAxis(zg,t)}localToWorld(t){return this.updateWorldMatrix(!0,!1),t.applyMatrix4(this.matrixWorld)}worldToLocal(t){return this.updateWorldMatrix(!0,!1),t.applyMatrix4(Fi.copy(this.matrixWorld).invert())}lookAt(t,e,i){t.isVector3?jl.copy(t):jl.set(t,e,i);let s=this.parent;this.updateWorldMatrix(!0,!1),Jo.setFromMatrixPosition(this.matrixWorld),this.isCamera||this.isLight?Fi.lookAt(Jo,jl,this.up):Fi.lookAt(jl,Jo,this.up),this.quaternion.setFromRotationMatrix(Fi),s&&(Fi.extractRotation(s.matrixWorld),Dr.setFromRotationMatrix(Fi),this.quaternion.premultiply(Dr.invert()))}add(t){if(arguments.length>1){for(let e=0;e<arguments.length;e++)this.add(arguments[e]);return this}return t===this?(Bt("Object3D.add: object can't be added as a child of itself.",t),this):(t&&t.isObject3D?(t.removeFromParent(),t.parent=this,this.children.push(t),t.dispatchEvent(Vg),Lr.child=t,this.dispatchEvent(Lr),Lr.child=null):Bt("Object3D.add: object not an instance of THREE.Object3D.",t),this)}remove(t){if(arguments.length>1){for(let i=0;i<arguments.length;i++)this.remove(arguments[i]);return this}let e=this.children.indexOf(t);return e!==-1&&(t.parent=null,this.children.splice(e,1),t.dispatchEvent(Cb),Ld.child=t,this.dispatchEvent(Ld),Ld.child=null),this}removeFromParent(){let t=this.parent;return t!==null&&t.remove(this),this}clear(){return this.remove(...this.children)}attach(t){return this.updateWorldMatrix(!0,!1),Fi.copy(this.matrixWorld).invert(),t.parent!==null&&(t.parent.updateWorldMatrix(!0,!1),Fi.multiply(t.parent.matrixWorld)),t.applyMatrix4(Fi),t.removeFromParent(),t.parent=this,this.children.push(t),t.updateWorldMatrix(!1,!0),t.dispatchEvent(Vg),Lr.child=t,this.dispatchEvent(Lr),Lr.child=null,this}getObjectById(t){return this.getObjectByProperty("id",t)}getObjectByName(t){return this.getObjectByProperty("name",t)}getObjectByProperty(t,e){if(this[t]===e)return this;for(let i=0,s=this.children.length;i<s;i++){let o=this.children[i].getObjectByProperty(t,e);if(o!==void 0)return o}}getObjectsByProperty(t,e,i=[]){this[t]===e&&i.push(this);let s=this.children;for(let r=0,o=s.length;r<o;r++)s[r].getObjectsByProperty(t,e,i);return i}getWorldPosition(t){return this.updateWorldMatrix(!0,!1),t.setFromMatrixPosition(this.matrixWorld)}getWorldQuaternion(t){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(Jo,t,Ab),t}getWorldScale(t){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(Jo,Eb,t),t}getWorldDirection(t){this.updateWorldMatrix(!0,!1);let e=this.matrixWorld.elements;return t.set(e[8],e[9],e[10]).normalize()}raycast(){}intersectsFrustum(){return!0}traverse(t){t(this);let e=this.children;for(let i=0,s=e.length;i<s;i++)e[i].traverse(t)}traverseVisible(t){if(this.visible===!1)return;t(this);let e=this.children;for(let i=0,s=e.length;i<s;i++)e[i].traverseVisible(t)}traverseAncestors(t){let e=this.parent;e!==null&&(t(e),e.traverseAncestors(t))}updateMatrix(){this.matrix.compose(this.position,this.quaternion,this.scale);let t=this.pivot;if(t!==null){let e=t.x,i=t.y,s=t.z,r=this.matrix.elements;r[12]+=e-r[0]*e-r[4]*i-r[8]*s,r[13]+=i-r[1]*e-r[5]*i-r[9]*s,r[14]+=s-r[2]*e-r[6]*i-r[10]*s}this.matrixWorldNeedsUpdate=!0}updateMatrixWorld(t){this.matrixAutoUpdate&&this.updateMatrix(),(this.matrixWorldNeedsUpdate||t)&&(this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),this.matrixWorldNeedsUpdate=!1,t=!0);let e=this.children;for(let i=0,s=e.length;i<s;i++)e[i].updateMatrixWorld(t)}updateWorldMatrix(t,e,i=!1){let s=this.parent;if(t===!0&&s!==null&&s.updateWorldMatrix(!0,!1),this.matrixAutoUpdate&&this.updateMatrix(),(this.matrixWorldNeedsUpdate||i)&&(this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),this.matrixWorldNeedsUpdate=!1,i=!0),e===!0){let r=this.children;for(let o=0,a=r.length;o<a;o++)r[o].updateWorldMatrix(!1,!0,i)}}toJSON(t){let e=t===void 0||typeof t=="string",i={};e&&(t={geometries:{},materials:{},textures:{},images:{},shapes:{},skeletons:{},animations:{},nodes:{}},i.metadata={version:4.7,type:"Object",generator:"Object3D.toJSON"});let s={};s.uuid=this.uuid,s.type=this.type,s.name=this.name,s.castShadow=this.castShadow,s.receiveShadow=this.receiveShadow,s.visible=this.visible,s.frustumCulled=this.frustumCulled,s.renderOrder=this.renderOrder,s.static=this.static,s.matrixAutoUpdate=this.matrixAutoUpdate,Object.keys(this.userData).length>0&&(s.userData=this.userData),s.layers=this.layers.mask,s.matrix=this.matrix.toArray(),s.up=this.up.toArray(),this.pivot!==null&&(s.pivot=this.pivot.toArray()),this.morphTargetDictionary!==void 0&&(s.morphTargetDictionary=Object.assign({},this.morphTargetDictionary)),this.morphTargetInfluences!==void 0&&(s.morphTargetInfluences=this.morphTargetInfluences.slice()),this.isInstancedMesh&&(s.type="InstancedMesh",s.count=this.count,s.instanceMatrix=this.instanceMatrix.toJSON(),this.instanceColor!==null&&(s.instanceColor=this.instanceColor.toJSON())),this.isBatchedMesh&&(s.type="BatchedMesh",s.perObjectFrustumCulled=this.perObjectFrustumCulled,s.sortObjects=this.sortObjects,s.drawRanges=this._drawRanges,s.reservedRanges=this._reservedRanges,s.geometryInfo=this._geometryInfo.map(a=>({...a,boundingBox:a.boundingBox?a.boundingBox.toJSON():void 0,boundingSphere:a.boundingSphere?a.boundingSphere.toJSON():void 0})),s.instanceInfo=this._instanceInfo.map(a=>({...a})),s.availableInstanceIds=this._availableInstanceIds.slice(),s.availableGeometryIds=this._availableGeometryIds.slice(),s.nextIndexStart=this._nextIndexStart,s.nextVertexStart=this._nextVertexStart,s.geometryCount=this._geometryCount,s.maxInstanceCount=this._maxInstanceCount,s.maxVertexCount=this._maxVertexCount,s.maxIndexCount=this._maxIndexCount,s.geometryInitialized=this._geometryInitialized,s.matricesTexture=this._matricesTexture.toJSON(t),s.indirectTexture=this._indirectTexture.toJSON(t),this._colorsTexture!==null&&(s.colorsTexture=this._colorsTexture.toJSON(t)),this.boundingSphere!==null&&(s.boundingSphere=this.boundingSphere.toJSON()),this.boundingBox!==null&&(s.boundingBox=this.boundingBox.toJSON()));function r(a,l){return a[l.uuid]===void 0&&(a[l.uuid]=l.toJSON(t)),l.uuid}if(this.isScene)this.background&&(this.background.isColor?s.background=this.background.toJSON():this.background.isTexture&&(s.background=this.background.toJSON(t).uuid)),this.environment&&this.environment.isTexture&&this.environment.isRenderTargetTexture!==!0&&(s.environment=this.environment.toJSON(t).uuid);else if(this.isMesh||this.isLine||this.isPoints){s.geometry=r(t.geometries,this.geometry);let a=this.geometry.parameters;if(a!==void 0&&a.shapes!==void 0){let l=a.shapes;if(Array.isArray(l))for(let u=0,h=l.length;u<h;u++){let d=l[u];r(t.shapes,d)}else r(t.shapes,l)}}if(this.isSkinnedMesh&&(s.bindMode=this.bindMode,s.bindMatrix=this.bindMatrix.toArray(),this.skeleton!==void 0&&(r(t.skeletons,this.skeleton),s.skeleton=this.skeleton.uuid)),this.material!==void 0)if(Array.isArray(this.material)){let a=[];for(let l=0,u=this.material.length;l<u;l++)a.push(r(t.materials,this.material[l]));s.material=a}else s.material=r(t.materials,this.material);if(this.children.length>0){s.children=[];for(let a=0;a<this.children.length;a++)s.children.push(this.children[a].toJSON(t).object)}if(this.animations.length>0){s.animations=[];for(let a=0;a<this.animations.length;a++){let l=this.animations[a];s.animations.push(r(t.animations,l))}}if(e){let a=o(t.geometries),l=o(t.materials),u=o(t.textures),h=o(t.images),d=o(t.shapes),p=o(t.skeletons),f=o(t.animations),g=o(t.nodes);a.length>0&&(i.geometries=a),l.length>0&&(i.materials=l),u.length>0&&(i.textures=u),h.length>0&&(i.images=h),d.length>0&&(i.shapes=d),p.length>0&&(i.skeletons=p),f.length>0&&(i.animations=f),g.length>0&&(i.nodes=g)}return i.object=s,i;function o(a){let l=[];for(let u in a){let h=a[u];delete h.metadata,l.push(h)}return l}}clone(t){return new this.constructor().copy(this,t)}copy(t,e=!0){if(this.name=t.name,this.up.copy(t.up),this.position.copy(t.position),this.rotation.order=t.rotation.order,this.quaternion.copy(t.quaternion),this.scale.copy(t.scale),this.pivot=t.pivot!==null?t.pivot.clone():null,this.matrix.copy(t.matrix),this.matrixWorld.copy(t.matrixWorld),this.matrixAutoUpdate=t.matrixAutoUpdate,this.matrixWorldAutoUpdate=t.matrixWorldAutoUpdate,this.matrixWorldNeedsUpdate=t.matrixWorldNeedsUpdate,this.layers.mask=t.layers.mask,this.visible=t.visible,this.castShadow=t.castShadow,this.receiveShadow=t.receiveShadow,this.frustumCulled=t.frustumCulled,this.renderOrder=t.renderOrder,this.static=t.static,this.animations=t.animations.slice(),this.userData=JSON.parse(JSON.stringify(t.userData)),e===!0)for(let i=0;i<t.children.length;i++){let s=t.children[i];this.add(s.clone())}return this}dispose(){this.dispatchEvent({type:"dispose"})}};en.DEFAULT_UP=new N(0,1,0);en.DEFAULT_MATRIX_AUTO_UPDATE=!0;en.DEFAULT_MATRIX_WORLD_AUTO_UPDATE=!0;var vi=class extends en{constructor(){super(),this.isGroup=!0,this.type="Group"}},Rb={type:"move"},Kr=class{constructor(){this._targetRay=null,this._grip=null,this._hand=null}getHandSpace(){return this._hand===null&&(this._hand=new vi,this._hand.matrixAutoUpdate=!1,this._hand.visible=!1,this._hand.joints={},this._hand.inputState={pinching:!1}),this._hand}getTargetRaySpace(){return this._targetRay===null&&(this._targetRay=new vi,this._targetRay.matrixAutoUpdate=!1,this._targetRay.visible=!1,this._targetRay.hasLinearVelocity=!1,this._targetRay.linearVelocity=new N,this._targetRay.hasAngularVelocity=!1,this._targetRay.angularVelocity=new N),this._targetRay}getGripSpace(){return this._grip===null&&(this._grip=new vi,this._grip.matrixAutoUpdate=!1,this._grip.visible=!1,this._grip.hasLinearVelocity=!1,this._grip.linearVelocity=new N,this._grip.hasAngularVelocity=!1,this._grip.angularVelocity=new N,this._grip.eventsEnabled=!1),this._grip}dispatchEvent(t){return this._targetRay!==null&&this._targetRay.dispatchEvent(t),this._grip!==null&&this._grip.dispatchEvent(t),this._hand!==null&&this._hand.dispatchEvent(t),this}connect(t){if(t&&t.hand){let e=this._hand;if(e)for(let i of t.hand.values())this._getHandJoint(e,i)}return this.dispatchEvent({type:"connected",data:t}),this}disconnect(t){return this.dispatchEvent({type:"disconnected",data:t}),this._targetRay!==null&&(this._targetRay.visible=!1),this._grip!==null&&(this._grip.visible=!1),this._hand!==null&&(this._hand.visible=!1),this}update(t,e,i){let s=null,r=null,o=null,a=this._targetRay,l=this._grip,u=this._hand;if(t&&e.session.visibilityState!=="visible-blurred"){if(u&&t.hand){o=!0;for(let _ of t.hand.values()){let v=e.getJointPose(_,i),m=this._getHandJoint(u,_);v!==null&&(m.matrix.fromArray(v.transform.matrix),m.matrix.decompose(m.position,m.quaternion,m.scale),m.matrixWorldNeedsUpdate=!0,m.jointRadius=v.radius),m.visible=v!==null}let h=u.joints["index-finger-tip"],d=u.joints["thumb-tip"],p=h.position.distanceTo(d.position),f=.02,g=.005;u.inputState.pinching&&p>f+g?(u.inputState.pinching=!1,this.dispatchEvent({type:"pinchend",handedness:t.handedness,target:this})):!u.inputState.pinching&&p<=f-g&&(u.inputState.pinching=!0,this.dispatchEvent({type:"pinchstart",handedness:t.handedness,target:this}))}else l!==null&&t.gripSpace&&(r=e.getPose(t.gripSpace,i),r!==null&&(l.matrix.fromArray(r.transform.matrix),l.matrix.decompose(l.position,l.quaternion,l.scale),l.matrixWorldNeedsUpdate=!0,r.linearVelocity?(l.hasLinearVelocity=!0,l.linearVelocity.copy(r.linearVelocity)):l.hasLinearVelocity=!1,r.angularVelocity?(l.hasAngularVelocity=!0,l.angularVelocity.copy(r.angularVelocity)):l.hasAngularVelocity=!1,l.eventsEnabled&&l.dispatchEvent({type:"gripUpdated",data:t,target:this})));a!==null&&(s=e.getPose(t.targetRaySpace,i),s===null&&r!==null&&(s=r),s!==null&&(a.matrix.fromArray(s.transform.matrix),a.matrix.decompose(a.position,a.quaternion,a.scale),a.matrixWorldNeedsUpdate=!0,s.linearVelocity?(a.hasLinearVelocity=!0,a.linearVelocity.copy(s.linearVelocity)):a.hasLinearVelocity=!1,s.angularVelocity?(a.hasAngularVelocity=!0,a.angularVelocity.copy(s.angularVelocity)):a.hasAngularVelocity=!1,this.dispatchEvent(Rb)))}return a!==null&&(a.visible=s!==null),l!==null&&(l.visible=r!==null),u!==null&&(u.visible=o!==null),this}_getHandJoint(t,e){if(t.joints[e.jointName]===void 0){let i=new vi;i.matrixAutoUpdate=!1,i.visible=!1,t.joints[e.jointName]=i,t.add(i)}return t.joints[e.jointName]}},tv={aliceblue:15792383,antiquewhite:16444375,aqua:65535,aquamarine:8388564,azure:15794175,beige:16119260,bisque:16770244,black:0,blanchedalmond:16772045,blue:255,blueviolet:9055202,brown:10824234,burlywood:14596231,cadetblue:6266528,chartreuse:8388352,chocolate:13789470,coral:16744272,cornflowerblue:6591981,cornsilk:16775388,crimson:14423100,cyan:65535,darkblue:139,darkcyan:35723,darkgoldenrod:12092939,darkgray:11119017,darkgreen:25600,darkgrey:11119017,darkkhaki:12433259,darkmagenta:9109643,darkolivegreen:5597999,darkorange:16747520,darkorchid:10040012,darkred:9109504,darksalmon:15308410,darkseagreen:9419919,darkslateblue:4734347,darkslategray:3100495,darkslategrey:3100495,darkturquoise:52945,darkviolet:9699539,deeppink:16716947,deepskyblue:49151,dimgray:6908265,dimgrey:6908265,dodgerblue:2003199,firebrick:11674146,floralwhite:16775920,forestgreen:2263842,fuchsia:16711935,gainsboro:14474460,ghostwhite:16316671,gold:16766720,goldenrod:14329120,gray:8421504,green:32768,greenyellow:11403055,grey:8421504,honeydew:15794160,hotpink:16738740,indianred:13458524,indigo:4915330,ivory:16777200,khaki:15787660,lavender:15132410,lavenderblush:16773365,lawngreen:8190976,lemonchiffon:16775885,lightblue:11393254,lightcoral:15761536,lightcyan:14745599,lightgoldenrodyellow:16448210,lightgray:13882323,lightgreen:9498256,lightgrey:13882323,lightpink:16758465,lightsalmon:16752762,lightseagreen:2142890,lightskyblue:8900346,lightslategray:7833753,lightslategrey:7833753,lightsteelblue:11584734,lightyellow:16777184,lime:65280,limegreen:3329330,linen:16445670,magenta:16711935,maroon:8388608,mediumaquamarine:6737322,mediumblue:205,mediumorchid:12211667,mediumpurple:9662683,mediumseagreen:3978097,mediumslateblue:8087790,mediumspringgreen:64154,mediumturquoise:4772300,mediumvioletred:13047173,midnightblue:1644912,mintcream:16121850,mistyrose:16770273,moccasin:16770229,navajowhite:16768685,navy:128,oldlace:16643558,olive:8421376,olivedrab:7048739,orange:16753920,orangered:16729344,orchid:14315734,palegoldenrod:15657130,palegreen:10025880,paleturquoise:11529966,palevioletred:14381203,papayawhip:16773077,peachpuff:16767673,peru:13468991,pink:16761035,plum:14524637,powderblue:11591910,purple:8388736,rebeccapurple:6697881,red:16711680,rosybrown:12357519,royalblue:4286945,saddlebrown:9127187,salmon:16416882,sandybrown:16032864,seagreen:3050327,seashell:16774638,sienna:10506797,silver:12632256,skyblue:8900331,slateblue:6970061,slategray:7372944,slategrey:7372944,snow:16775930,springgreen:65407,steelblue:4620980,tan:13808780,teal:32896,thistle:14204888,tomato:16737095,turquoise:4251856,violet:15631086,wheat:16113331,white:16777215,whitesmoke:16119285,yellow:16776960,yellowgreen:10145074},as={h:0,s:0,l:0},Ql={h:0,s:0,l:0};function Nd(n,t,e){return e<0&&(e+=1),e>1&&(e-=1),e<1/6?n+(t-n)*6*e:e<1/2?t:e<2/3?n+(t-n)*6*(2/3-e):n}var Xt=class{constructor(t,e,i){return this.isColor=!0,this.r=1,this.g=1,this.b=1,this.set(t,e,i)}set(t,e,i){if(e===void 0&&i===void 0){let s=t;s&&s.isColor?this.copy(s):typeof s=="number"?this.setHex(s):typeof s=="string"&&this.setStyle(s)}else this.setRGB(t,e,i);return this}setScalar(t){return this.r=t,this.g=t,this.b=t,this}setHex(t,e=kn){return t=Math.floor(t),this.r=(t>>16&255)/255,this.g=(t>>8&255)/255,this.b=(t&255)/255,ne.colorSpaceToWorking(this,e),this}setRGB(t,e,i,s=ne.workingColorSpace){return this.r=t,this.g=e,this.b=i,ne.colorSpaceToWorking(this,s),this}setHSL(t,e,i,s=ne.workingColorSpace){if(t=Uf(t,1),e=Yt(e,0,1),i=Yt(i,0,1),e===0)this.r=this.g=this.b=i;else{let r=i<=.5?i*(1+e):i+e-i*e,o=2*i-r;this.r=Nd(o,r,t+1/3),this.g=Nd(o,r,t),this.b=Nd(o,r,t-1/3)}return ne.colorSpaceToWorking(this,s),this}setStyle(t,e=kn){function i(r){r!==void 0&&parseFloat(r)<1&&Nt("Color: Alpha component of "+t+" will be ignored.")}let s;if(s=/^(\w+)\(([^\)]*)\)/.exec(t)){let r,o=s[1],a=s[2];switch(o){case"rgb":case"rgba":if(r=/^\s*(\d+)\s*,\s*(\d+)\s*,\s*(\d+)\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return i(r[4]),this.setRGB(Math.min(255,parseInt(r[1],10))/255,Math.min(255,parseInt(r[2],10))/255,Math.min(255,parseInt(r[3],10))/255,e);if(r=/^\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return i(r[4]),this.setRGB(Math.min(100,parseFloat(r[1]))/100,Math.min(100,parseFloat(r[2]))/100,Math.min(100,parseFloat(r[3]))/100,e);break;case"hsl":case"hsla":if(r=/^\s*([+-]?(?:\d+(?:\.\d+)?|\.\d+))\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return i(r[4]),this.setHSL(parseFloat(r[1])/360,parseFloat(r[2])/100,parseFloat(r[3])/100,e);break;default:Nt("Color: Unknown color model "+t)}}else if(s=/^\#([A-Fa-f\d]+)$/.exec(t)){let r=s[1],o=r.length;if(o===3)return this.setRGB(parseInt(r.charAt(0),16)/15,parseInt(r.charAt(1),16)/15,parseInt(r.charAt(2),16)/15,e);if(o===6)return this.setHex(parseInt(r,16),e);Nt("Color: Invalid hex color "+t)}else if(t&&t.length>0)return this.setColorName(t,e);return this}setColorName(t,e=kn){let i=tv[t.toLowerCase()];return i!==void 0?this.setHex(i,e):Nt("Color: Unknown color "+t),this}clone(){return new this.constructor(this.r,this.g,this.b)}copy(t){return this.r=t.r,this.g=t.g,this.b=t.b,this}copySRGBToLinear(t){return this.r=Hi(t.r),this.g=Hi(t.g),this.b=Hi(t.b),this}copyLinearToSRGB(t){return this.r=Wr(t.r),this.g=Wr(t.g),this.b=Wr(t.b),this}convertSRGBToLinear(){return this.copySRGBToLinear(this),this}convertLinearToSRGB(){return this.copyLinearToSRGB(this),this}getHex(t=kn){return ne.workingToColorSpace(fn.copy(this),t),Math.round(Yt(fn.r*255,0,255))*65536+Math.round(Yt(fn.g*255,0,255))*256+Math.round(Yt(fn.b*255,0,255))}getHexString(t=kn){return("000000"+this.getHex(t).toString(16)).slice(-6)}getHSL(t,e=ne.workingColorSpace){ne.workingToColorSpace(fn.copy(this),e);let i=fn.r,s=fn.g,r=fn.b,o=Math.max(i,s,r),a=Math.min(i,s,r),l,u,h=(a+o)/2;if(a===o)l=0,u=0;else{let d=o-a;switch(u=h<=.5?d/(o+a):d/(2-o-a),o){case i:l=(s-r)/d+(s<r?6:0);break;case s:l=(r-i)/d+2;break;case r:l=(i-s)/d+4;break}l/=6}return t.h=l,t.s=u,t.l=h,t}getRGB(t,e=ne.workingColorSpace){return ne.workingToColorSpace(fn.copy(this),e),t.r=fn.r,t.g=fn.g,t.b=fn.b,t}getStyle(t=kn){ne.workingToColorSpace(fn.copy(this),t);let e=fn.r,i=fn.g,s=fn.b;return t!==kn?`color(${t} ${e.toFixed(3)} ${i.toFixed(3)} ${s.toFixed(3)})`:`rgb(${Math.round(e*255)},${Math.round(i*255)},${Math.round(s*255)})`}offsetHSL(t,e,i){return this.getHSL(as),this.setHSL(as.h+t,as.s+e,as.l+i)}add(t){return this.r+=t.r,this.g+=t.g,this.b+=t.b,this}addColors(t,e){return this.r=t.r+e.r,this.g=t.g+e.g,this.b=t.b+e.b,this}addScalar(t){return this.r+=t,this.g+=t,this.b+=t,this}sub(t){return this.r=Math.max(0,this.r-t.r),this.g=Math.max(0,this.g-t.g),this.b=Math.max(0,this.b-t.b),this}multiply(t){return this.r*=t.r,this.g*=t.g,this.b*=t.b,this}multiplyScalar(t){return this.r*=t,this.g*=t,this.b*=t,this}lerp(t,e){return this.r+=(t.r-this.r)*e,this.g+=(t.g-this.g)*e,this.b+=(t.b-this.b)*e,this}lerpColors(t,e,i){return this.r=t.r+(e.r-t.r)*i,this.g=t.g+(e.g-t.g)*i,this.b=t.b+(e.b-t.b)*i,this}lerpHSL(t,e){this.getHSL(as),t.getHSL(Ql);let i=oa(as.h,Ql.h,e),s=oa(as.s,Ql.s,e),r=oa(as.l,Ql.l,e);return this.setHSL(i,s,r),this}setFromVector3(t){return this.r=t.x,this.g=t.y,this.b=t.z,this}applyMatrix3(t){let e=this.r,i=this.g,s=this.b,r=t.elements;return this.r=r[0]*e+r[3]*i+r[6]*s,this.g=r[1]*e+r[4]*i+r[7]*s,this.b=r[2]*e+r[5]*i+r[8]*s,this}equals(t){return t.r===this.r&&t.g===this.g&&t.b===this.b}fromArray(t,e=0){return this.r=t[e],this.g=t[e+1],this.b=t[e+2],this}toArray(t=[],e=0){return t[e]=this.r,t[e+1]=this.g,t[e+2]=this.b,t}fromBufferAttribute(t,e){return this.r=t.getX(e),this.g=t.getY(e),this.b=t.getZ(e),this}toJSON(){return this.getHex()}*[Symbol.iterator](){yield this.r,yield this.g,yield this.b}},fn=new Xt;Xt.NAMES=tv;var ma=class extends en{constructor(){super(),this.isScene=!0,this.type="Scene",this.background=null,this.environment=null,this.fog=null,this.backgroundBlurriness=0,this.backgroundIntensity=1,this.backgroundRotation=new $i,this.environmentIntensity=1,this.environmentRotation=new $i,this.overrideMaterial=null,typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}copy(t,e){return super.copy(t,e),this.background=t.background!==null?t.background.clone():null,this.environment=t.environment!==null?t.environment.clone():null,this.fog=t.fog!==null?t.fog.clone():null,this.backgroundBlurriness=t.backgroundBlurriness,this.backgroundIntensity=t.backgroundIntensity,this.backgroundRotation.copy(t.backgroundRotation),this.environmentIntensity=t.environmentIntensity,this.environmentRotation.copy(t.environmentRotation),this.overrideMaterial=t.overrideMaterial!==null?t.overrideMaterial.clone():null,this.matrixAutoUpdate=t.matrixAutoUpdate,this}toJSON(t){let e=super.toJSON(t);return this.fog!==null&&(e.object.fog=this.fog.toJSON()),e.object.backgroundBlurriness=this.backgroundBlurriness,e.object.backgroundIntensity=this.backgroundIntensity,e.object.backgroundRotation=this.backgroundRotation.toArray(),e.object.environmentIntensity=this.environmentIntensity,e.object.environmentRotation=this.environmentRotation.toArray(),e}},li=new N,Bi=new N,Ud=new N,zi=new N,Nr=new N,Ur=new N,Gg=new N,Od=new N,kd=new N,Fd=new N,Bd=new Re,zd=new Re,Vd=new Re,hs=class n{constructor(t=new N,e=new N,i=new N){this.a=t,this.b=e,this.c=i}static getNormal(t,e,i,s){s.subVectors(i,e),li.subVectors(t,e),s.cross(li);let r=s.lengthSq();return r>0?s.multiplyScalar(1/Math.sqrt(r)):s.set(0,0,0)}static getBarycoord(t,e,i,s,r){li.subVectors(s,e),Bi.subVectors(i,e),Ud.subVectors(t,e);let o=li.dot(li),a=li.dot(Bi),l=li.dot(Ud),u=Bi.dot(Bi),h=Bi.dot(Ud),d=o*u-a*a;if(d===0)return r.set(0,0,0),null;let p=1/d,f=(u*l-a*h)*p,g=(o*h-a*l)*p;return r.set(1-f-g,g,f)}static containsPoint(t,e,i,s){return this.getBarycoord(t,e,i,s,zi)===null?!1:zi.x>=0&&zi.y>=0&&zi.x+zi.y<=1}static getInterpolation(t,e,i,s,r,o,a,l){return this.getBarycoord(t,e,i,s,zi)===null?(l.x=0,l.y=0,"z"in l&&(l.z=0),"w"in l&&(l.w=0),null):(l.setScalar(0),l.addScaledVector(r,zi.x),l.addScaledVector(o,zi.y),l.addScaledVector(a,zi.z),l)}static getInterpolatedAttribute(t,e,i,s,r,o){return Bd.setScalar(0),zd.setScalar(0),Vd.setScalar(0),Bd.fromBufferAttribute(t,e),zd.fromBufferAttribute(t,i),Vd.fromBufferAttribute(t,s),o.setScalar(0),o.addScaledVector(Bd,r.x),o.addScaledVector(zd,r.y),o.addScaledVector(Vd,r.z),o}static isFrontFacing(t,e,i,s){return li.subVectors(i,e),Bi.subVectors(t,e),li.cross(Bi).dot(s)<0}set(t,e,i){return this.a.copy(t),this.b.copy(e),this.c.copy(i),this}setFromPointsAndIndices(t,e,i,s){return this.a.copy(t[e]),this.b.copy(t[i]),this.c.copy(t[s]),this}setFromAttributeAndIndices(t,e,i,s){return this.a.fromBufferAttribute(t,e),this.b.fromBufferAttribute(t,i),this.c.fromBufferAttribute(t,s),this}clone(){return new this.constructor().copy(this)}copy(t){return this.a.copy(t.a),this.b.copy(t.b),this.c.copy(t.c),this}getArea(){return li.subVectors(this.c,this.b),Bi.subVectors(this.a,this.b),li.cross(Bi).length()*.5}getMidpoint(t){return t.addVectors(this.a,this.b).add(this.c).multiplyScalar(1/3)}getNormal(t){return n.getNormal(this.a,this.b,this.c,t)}getPlane(t){return t.setFromCoplanarPoints(this.a,this.b,this.c)}getBarycoord(t,e){return n.getBarycoord(t,this.a,this.b,this.c,e)}getInterpolation(t,e,i,s,r){return n.getInterpolation(t,this.a,this.b,this.c,e,i,s,r)}containsPoint(t){return n.containsPoint(t,this.a,this.b,this.c)}isFrontFacing(t){return n.isFrontFacing(this.a,this.b,this.c,t)}intersectsBox(t){return t.intersectsTriangle(this)}closestPointToPoint(t,e){let i=this.a,s=this.b,r=this.c,o,a;Nr.subVectors(s,i),Ur.subVectors(r,i),Od.subVectors(t,i);let l=Nr.dot(Od),u=Ur.dot(Od);if(l<=0&&u<=0)return e.copy(i);kd.subVectors(t,s);let h=Nr.dot(kd),d=Ur.dot(kd);if(h>=0&&d<=h)return e.copy(s);let p=l*d-h*u;if(p<=0&&l>=0&&h<=0&&l-h>0)return o=l/(l-h),e.copy(i).addScaledVector(Nr,o);Fd.subVectors(t,r);let f=Nr.dot(Fd),g=Ur.dot(Fd);if(g>=0&&f<=g)return e.copy(r);let _=f*u-l*g;if(_<=0&&u>=0&&g<=0)return a=u/(u-g),e.copy(i).addScaledVector(Ur,a);let v=h*g-f*d;if(v<=0&&d-h>=0&&f-g>=0)return Gg.subVectors(r,s),a=(d-h)/(d-h+(f-g)),e.copy(s).addScaledVector(Gg,a);let m=1/(v+_+p);return o=_*m,a=p*m,e.copy(i).addScaledVector(Nr,o).addScaledVector(Ur,a)}equals(t){return t.a.equals(this.a)&&t.b.equals(this.b)&&t.c.equals(this.c)}},_i=class{constructor(t=new N(1/0,1/0,1/0),e=new N(-1/0,-1/0,-1/0)){this.isBox3=!0,this.min=t,this.max=e}set(t,e){return this.min.copy(t),this.max.copy(e),this}setFromArray(t){this.makeEmpty();for(let e=0,i=t.length;e<i;e+=3)this.expandByPoint(ci.fromArray(t,e));return this}setFromBufferAttribute(t){this.makeEmpty();for(let e=0,i=t.count;e<i;e++)this.expandByPoint(ci.fromBufferAttribute(t,e));return this}setFromPoints(t){this.makeEmpty();for(let e=0,i=t.length;e<i;e++)this.expandByPoint(t[e]);return this}setFromCenterAndSize(t,e){let i=ci.copy(e).multiplyScalar(.5);return this.min.copy(t).sub(i),this.max.copy(t).add(i),this}setFromObject(t,e=!1){return this.makeEmpty(),this.expandByObject(t,e)}clone(){return new this.constructor().copy(this)}copy(t){return this.min.copy(t.min),this.max.copy(t.max),this}makeEmpty(){return this.min.x=this.min.y=this.min.z=1/0,this.max.x=this.max.y=this.max.z=-1/0,this}isEmpty(){return this.max.x<this.min.x||this.max.y<this.min.y||this.max.z<this.min.z}getCenter(t){return this.isEmpty()?t.set(0,0,0):t.addVectors(this.min,this.max).multiplyScalar(.5)}getSize(t){return this.isEmpty()?t.set(0,0,0):t.subVectors(this.max,this.min)}expandByPoint(t){return this.min.min(t),this.max.max(t),this}expandByVector(t){return this.min.sub(t),this.max.add(t),this}expandByScalar(t){return this.min.addScalar(-t),this.max.addScalar(t),this}expandByObject(t,e=!1){t.updateWorldMatrix(!1,!1);let i=t.geometry;if(i!==void 0){let r=i.getAttribute("position");if(e===!0&&r!==void 0&&t.isInstancedMesh!==!0&&t.isBatchedMesh!==!0)for(let o=0,a=r.count;o<a;o++)t.isMesh===!0?t.getVertexPosition(o,ci):ci.fromBufferAttribute(r,o),ci.applyMatrix4(t.matrixWorld),this.expandByPoint(ci);else t.boundingBox!==void 0?(t.boundingBox===null&&t.computeBoundingBox(),tc.copy(t.boundingBox)):(i.boundingBox===null&&i.computeBoundingBox(),tc.copy(i.boundingBox)),tc.applyMatrix4(t.matrixWorld),this.union(tc)}let s=t.children;for(let r=0,o=s.length;r<o;r++)this.expandByObject(s[r],e);return this}containsPoint(t){return t.x>=this.min.x&&t.x<=this.max.x&&t.y>=this.min.y&&t.y<=this.max.y&&t.z>=this.min.z&&t.z<=this.max.z}containsBox(t){return this.min.x<=t.min.x&&t.max.x<=this.max.x&&this.min.y<=t.min.y&&t.max.y<=this.max.y&&this.min.z<=t.min.z&&t.max.z<=this.max.z}getParameter(t,e){return e.set((t.x-this.min.x)/(this.max.x-this.min.x),(t.y-this.min.y)/(this.max.y-this.min.y),(t.z-this.min.z)/(this.max.z-this.min.z))}intersectsBox(t){return t.max.x>=this.min.x&&t.min.x<=this.max.x&&t.max.y>=this.min.y&&t.min.y<=this.max.y&&t.max.z>=this.min.z&&t.min.z<=this.max.z}intersectsSphere(t){return this.clampPoint(t.center,ci),ci.distanceToSquared(t.center)<=t.radius*t.radius}intersectsPlane(t){let e,i;return t.normal.x>0?(e=t.normal.x*this.min.x,i=t.normal.x*this.max.x):(e=t.normal.x*this.max.x,i=t.normal.x*this.min.x),t.normal.y>0?(e+=t.normal.y*this.min.y,i+=t.normal.y*this.max.y):(e+=t.normal.y*this.max.y,i+=t.normal.y*this.min.y),t.normal.z>0?(e+=t.normal.z*this.min.z,i+=t.normal.z*this.max.z):(e+=t.normal.z*this.max.z,i+=t.normal.z*this.min.z),e<=-t.constant&&i>=-t.constant}intersectsTriangle(t){if(this.isEmpty())return!1;this.getCenter(Ko),ec.subVectors(this.max,Ko),Or.subVectors(t.a,Ko),kr.subVectors(t.b,Ko),Fr.subVectors(t.c,Ko),ls.subVectors(kr,Or),cs.subVectors(Fr,kr),Hs.subVectors(Or,Fr);let e=[0,-ls.z,ls.y,0,-cs.z,cs.y,0,-Hs.z,Hs.y,ls.z,0,-ls.x,cs.z,0,-cs.x,Hs.z,0,-Hs.x,-ls.y,ls.x,0,-cs.y,cs.x,0,-Hs.y,Hs.x,0];return!Gd(e,Or,kr,Fr,ec)||(e=[1,0,0,0,1,0,0,0,1],!Gd(e,Or,kr,Fr,ec))?!1:(nc.crossVectors(ls,cs),e=[nc.x,nc.y,nc.z],Gd(e,Or,kr,Fr,ec))}clampPoint(t,e){return e.copy(t).clamp(this.min,this.max)}distanceToPoint(t){return this.clampPoint(t,ci).distanceTo(t)}getBoundingSphere(t){return this.isEmpty()?t.makeEmpty():(this.getCenter(t.center),t.radius=this.getSize(ci).length()*.5),t}intersect(t){return this.min.max(t.min),this.max.min(t.max),this.isEmpty()&&this.makeEmpty(),this}union(t){return this.min.min(t.min),this.max.max(t.max),this}applyMatrix4(t){return this.isEmpty()?this:(Vi[0].set(this.min.x,this.min.y,this.min.z).applyMatrix4(t),Vi[1].set(this.min.x,this.min.y,this.max.z).applyMatrix4(t),Vi[2].set(this.min.x,this.max.y,this.min.z).applyMatrix4(t),Vi[3].set(this.min.x,this.max.y,this.max.z).applyMatrix4(t),Vi[4].set(this.max.x,this.min.y,this.min.z).applyMatrix4(t),Vi[5].set(this.max.x,this.min.y,this.max.z).applyMatrix4(t),Vi[6].set(this.max.x,this.max.y,this.min.z).applyMatrix4(t),Vi[7].set(this.max.x,this.max.y,this.max.z).applyMatrix4(t),this.setFromPoints(Vi),this)}translate(t){return this.min.add(t),this.max.add(t),this}equals(t){return t.min.equals(this.min)&&t.max.equals(this.max)}toJSON(){return{min:this.min.toArray(),max:this.max.toArray()}}fromJSON(t){return this.min.fromArray(t.min),this.max.fromArray(t.max),this}},Vi=[new N,new N,new N,new N,new N,new N,new N,new N],ci=new N,tc=new _i,Or=new N,kr=new N,Fr=new N,ls=new N,cs=new N,Hs=new N,Ko=new N,ec=new N,nc=new N,Ws=new N;function Gd(n,t,e,i,s){for(let r=0,o=n.length-3;r<=o;r+=3){Ws.fromArray(n,r);let a=s.x*Math.abs(Ws.x)+s.y*Math.abs(Ws.y)+s.z*Math.abs(Ws.z),l=t.dot(Ws),u=e.dot(Ws),h=i.dot(Ws);if(Math.max(-Math.max(l,u,h),Math.min(l,u,h))>a)return!1}return!0}var ze=new N,ic=new at,Pb=0,$e=class extends ui{constructor(t,e,i=!1){if(super(),Array.isArray(t))throw new TypeError("THREE.BufferAttribute: array should be a Typed Array.");this.isBufferAttribute=!0,Object.defineProperty(this,"id",{value:Pb++}),this.name="",this.array=t,this.itemSize=e,this.count=t!==void 0?t.length/e:0,this.normalized=i,this.usage=q0,this.updateRanges=[],this.gpuType=jn,this.version=0,this._normalizationScale=t!==void 0?kf(t):void 0}onUploadCallback(){}set needsUpdate(t){t===!0&&this.version++}setUsage(t){return this.usage=t,this}addUpdateRange(t,e){this.updateRanges.push({start:t,count:e})}clearUpdateRanges(){this.updateRanges.length=0}copy(t){return this.name=t.name,this.array=new t.array.constructor(t.array),this.itemSize=t.itemSize,this.count=t.count,this.normalized=t.normalized,this.usage=t.usage,this.gpuType=t.gpuType,this._normalizationScale=t._normalizationScale,this}copyAt(t,e,i){t*=this.itemSize,i*=e.itemSize;for(let s=0,r=this.itemSize;s<r;s++)this.array[t+s]=e.array[i+s];return this}copyArray(t){return this.array.set(t),this}applyMatrix3(t){if(this.itemSize===2)for(let e=0,i=this.count;e<i;e++)ic.fromBufferAttribute(this,e),ic.applyMatrix3(t),this.setXY(e,ic.x,ic.y);else if(this.itemSize===3)for(let e=0,i=this.count;e<i;e++)ze.fromBufferAttribute(this,e),ze.applyMatrix3(t),this.setXYZ(e,ze.x,ze.y,ze.z);return this}applyMatrix4(t){for(let e=0,i=this.count;e<i;e++)ze.fromBufferAttribute(this,e),ze.applyMatrix4(t),this.setXYZ(e,ze.x,ze.y,ze.z);return this}applyNormalMatrix(t){for(let e=0,i=this.count;e<i;e++)ze.fromBufferAttribute(this,e),ze.applyNormalMatrix(t),this.setXYZ(e,ze.x,ze.y,ze.z);return this}transformDirection(t){for(let e=0,i=this.count;e<i;e++)ze.fromBufferAttribute(this,e),ze.transformDirection(t),this.setXYZ(e,ze.x,ze.y,ze.z);return this}set(t,e=0){return this.array.set(t,e),this}getComponent(t,e){let i=this.array[t*this.itemSize+e];return this.normalized&&(i=this._denormalize(i)),i}setComponent(t,e,i){return this.normalized&&(i=this._normalize(i)),this.array[t*this.itemSize+e]=i,this}getX(t){let e=this.array[t*this.itemSize];return this.normalized&&(e=this._denormalize(e)),e}setX(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize]=e,this}getY(t){let e=this.array[t*this.itemSize+1];return this.normalized&&(e=this._denormalize(e)),e}setY(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize+1]=e,this}getZ(t){let e=this.array[t*this.itemSize+2];return this.normalized&&(e=this._denormalize(e)),e}setZ(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize+2]=e,this}getW(t){let e=this.array[t*this.itemSize+3];return this.normalized&&(e=this._denormalize(e)),e}setW(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize+3]=e,this}setXY(t,e,i){return t*=this.itemSize,this.normalized&&(e=this._normalize(e),i=this._normalize(i)),this.array[t+0]=e,this.array[t+1]=i,this}setXYZ(t,e,i,s){return t*=this.itemSize,this.normalized&&(e=this._normalize(e),i=this._normalize(i),s=this._normalize(s)),this.array[t+0]=e,this.array[t+1]=i,this.array[t+2]=s,this}setXYZW(t,e,i,s,r){return t*=this.itemSize,this.normalized&&(e=this._normalize(e),i=this._normalize(i),s=this._normalize(s),r=this._normalize(r)),this.array[t+0]=e,this.array[t+1]=i,this.array[t+2]=s,this.array[t+3]=r,this}onUpload(t){return this.onUploadCallback=t,this}clone(){return new this.constructor(this.array,this.itemSize).copy(this)}toJSON(){let t={itemSize:this.itemSize,type:this.array.constructor.name,array:Array.from(this.array),normalized:this.normalized};return t.name=this.name,t.usage=this.usage,t.gpuType=this.gpuType,t}dispose(){this.dispatchEvent({type:"dispose"})}_denormalize(t){let e=this._normalizationScale;return e!==void 0?Math.max(t/e,-1):j0(t,this.array)}_normalize(t){let e=this._normalizationScale;return e!==void 0?Math.round(t*e):Q0(t,this.array)}};var ga=class extends $e{constructor(t,e,i){super(new Uint16Array(t),e,i)}};var va=class extends $e{constructor(t,e,i){super(new Uint32Array(t),e,i)}};var jt=class extends $e{constructor(t,e,i){super(new Float32Array(t),e,i)}},Ib=new _i,jo=new N,Hd=new N,yi=class{constructor(t=new N,e=-1){this.isSphere=!0,this.center=t,this.radius=e}set(t,e){return this.center.copy(t),this.radius=e,this}setFromPoints(t,e){let i=this.center;e!==void 0?i.copy(e):Ib.setFromPoints(t).getCenter(i);let s=0;for(let r=0,o=t.length;r<o;r++)s=Math.max(s,i.distanceToSquared(t[r]));return this.radius=Math.sqrt(s),this}copy(t){return this.center.copy(t.center),this.radius=t.radius,this}isEmpty(){return this.radius<0}makeEmpty(){return this.center.set(0,0,0),this.radius=-1,this}containsPoint(t){return t.distanceToSquared(this.center)<=this.radius*this.radius}distanceToPoint(t){return t.distanceTo(this.center)-this.radius}intersectsSphere(t){let e=this.radius+t.radius;return t.center.distanceToSquared(this.center)<=e*e}intersectsBox(t){return t.intersectsSphere(this)}intersectsPlane(t){return Math.abs(t.distanceToPoint(this.center))<=this.radius}clampPoint(t,e){let i=this.center.distanceToSquared(t);return e.copy(t),i>this.radius*this.radius&&(e.sub(this.center).normalize(),e.multiplyScalar(this.radius).add(this.center)),e}getBoundingBox(t){return this.isEmpty()?(t.makeEmpty(),t):(t.set(this.center,this.center),t.expandByScalar(this.radius),t)}applyMatrix4(t){return this.center.applyMatrix4(t),this.radius=this.radius*t.getMaxScaleOnAxis(),this}translate(t){return this.center.add(t),this}expandByPoint(t){if(this.isEmpty())return this.center.copy(t),this.radius=0,this;jo.subVectors(t,this.center);let e=jo.lengthSq();if(e>this.radius*this.radius){let i=Math.sqrt(e),s=(i-this.radius)*.5;this.center.addScaledVector(jo,s/i),this.radius+=s}return this}union(t){return t.isEmpty()?this:this.isEmpty()?(this.copy(t),this):(this.center.equals(t.center)===!0?this.radius=Math.max(this.radius,t.radius):(Hd.subVectors(t.center,this.center).setLength(t.radius),this.expandByPoint(jo.copy(t.center).add(Hd)),this.expandByPoint(jo.copy(t.center).sub(Hd))),this)}equals(t){return t.center.equals(this.center)&&t.radius===this.radius}clone(){return new this.constructor().copy(this)}toJSON(){return{radius:this.radius,center:this.center.toArray()}}fromJSON(t){return this.radius=t.radius,this.center.fromArray(t.center),this}},Db=0,Jn=new oe,Wd=new en,Br=new N,On=new _i,Qo=new _i,Qe=new N,me=class n extends ui{constructor(){super(),this.isBufferGeometry=!0,Object.defineProperty(this,"id",{value:Db++}),this.uuid=tr(),this.name="",this.type="BufferGeometry",this.index=null,this.indirect=null,this.indirectOffset=0,this.attributes={},this.morphAttributes={},this.morphTargetsRelative=!1,this.groups=[],this.boundingBox=null,this.boundingSphere=null,this.drawRange={start:0,count:1/0},this.userData={},this._transformed=!1}getIndex(){return this.index}setIndex(t){return Array.isArray(t)?this.index=new(ib(t)?va:ga)(t,1):this.index=t,this}setIndirect(t,e=0){return this.indirect=t,this.indirectOffset=e,this}getIndirect(){return this.indirect}getAttribute(t){return this.attributes[t]}setAttribute(t,e){return this.attributes[t]=e,this}deleteAttribute(t){return delete this.attributes[t],this}hasAttribute(t){return this.attributes[t]!==void 0}addGroup(t,e,i=0){this.groups.push({start:t,count:e,materialIndex:i})}clearGroups(){this.groups=[]}setDrawRange(t,e){this.drawRange.start=t,this.drawRange.count=e}applyMatrix4(t){let e=this.attributes.position;e!==void 0&&(e.applyMatrix4(t),e.needsUpdate=!0);let i=this.attributes.normal;if(i!==void 0){let r=new Gt().getNormalMatrix(t);i.applyNormalMatrix(r),i.needsUpdate=!0}let s=this.attributes.tangent;return s!==void 0&&(s.transformDirection(t),s.needsUpdate=!0),this.boundingBox!==null&&this.computeBoundingBox(),this.boundingSphere!==null&&this.computeBoundingSphere(),this._transformed=!0,this}applyQuaternion(t){return Jn.makeRotationFromQuaternion(t),this.applyMatrix4(Jn),this}rotateX(t){return Jn.makeRotationX(t),this.applyMatrix4(Jn),this}rotateY(t){return Jn.makeRotationY(t),this.applyMatrix4(Jn),this}rotateZ(t){return Jn.makeRotationZ(t),this.applyMatrix4(Jn),this}translate(t,e,i){return Jn.makeTranslation(t,e,i),this.applyMatrix4(Jn),this}scale(t,e,i){return Jn.makeScale(t,e,i),this.applyMatrix4(Jn),this}lookAt(t){return Wd.lookAt(t),Wd.updateMatrix(),this.applyMatrix4(Wd.matrix),this}center(){return this.computeBoundingBox(),this.boundingBox.getCenter(Br).negate(),this.translate(Br.x,Br.y,Br.z),this}setFromPoints(t){let e=this.getAttribute("position");if(e===void 0){let i=[];for(let s=0,r=t.length;s<r;s++){let o=t[s];i.push(o.x,o.y,o.z||0)}this.setAttribute("position",new jt(i,3))}else{let i=Math.min(t.length,e.count);for(let s=0;s<i;s++){let r=t[s];e.setXYZ(s,r.x,r.y,r.z||0)}t.length>e.count&&Nt("BufferGeometry: Buffer size too small for points data. Use .dispose() and create a new geometry."),e.needsUpdate=!0}return this}computeBoundingBox(){this.boundingBox===null&&(this.boundingBox=new _i);let t=this.attributes.position,e=this.morphAttributes.position;if(t&&t.isGLBufferAttribute){Bt("BufferGeometry.computeBoundingBox(): GLBufferAttribute requires a manual bounding box.",this),this.boundingBox.set(new N(-1/0,-1/0,-1/0),new N(1/0,1/0,1/0));return}if(t!==void 0){if(this.boundingBox.setFromBufferAttribute(t),e)for(let i=0,s=e.length;i<s;i++){let r=e[i];On.setFromBufferAttribute(r),this.morphTargetsRelative?(Qe.addVectors(this.boundingBox.min,On.min),this.boundingBox.expandByPoint(Qe),Qe.addVectors(this.boundingBox.max,On.max),this.boundingBox.expandByPoint(Qe)):(this.boundingBox.expandByPoint(On.min),this.boundingBox.expandByPoint(On.max))}}else this.boundingBox.makeEmpty();(isNaN(this.boundingBox.min.x)||isNaN(this.boundingBox.min.y)||isNaN(this.boundingBox.min.z))&&Bt('BufferGeometry.computeBoundingBox(): Computed min/max have NaN values. The "position" attribute is likely to have NaN values.',this)}computeBoundingSphere(){this.boundingSphere===null&&(this.boundingSphere=new yi);let t=this.attributes.position,e=this.morphAttributes.position;if(t&&t.isGLBufferAttribute){Bt("BufferGeometry.computeBoundingSphere(): GLBufferAttribute requires a manual bounding sphere.",this),this.boundingSphere.set(new N,1/0);return}if(t){let i=this.boundingSphere.center;if(On.setFromBufferAttribute(t),e)for(let r=0,o=e.length;r<o;r++){let a=e[r];Qo.setFromBufferAttribute(a),this.morphTargetsRelative?(Qe.addVectors(On.min,Qo.min),On.expandByPoint(Qe),Qe.addVectors(On.max,Qo.max),On.expandByPoint(Qe)):(On.expandByPoint(Qo.min),On.expandByPoint(Qo.max))}On.getCenter(i);let s=0;for(let r=0,o=t.count;r<o;r++)Qe.fromBufferAttribute(t,r),s=Math.max(s,i.distanceToSquared(Qe));if(e)for(let r=0,o=e.length;r<o;r++){let a=e[r],l=this.morphTargetsRelative;for(let u=0,h=a.count;u<h;u++)Qe.fromBufferAttribute(a,u),l&&(Br.fromBufferAttribute(t,u),Qe.add(Br)),s=Math.max(s,i.distanceToSquared(Qe))}this.boundingSphere.radius=Math.sqrt(s),isNaN(this.boundingSphere.radius)&&Bt('BufferGeometry.computeBoundingSphere(): Computed radius is NaN. The "position" attribute is likely to have NaN values.',this)}}computeTangents(){let t=this.index,e=this.attributes;if(t===null||e.position===void 0||e.normal===void 0||e.uv===void 0){Bt("BufferGeometry: .computeTangents() failed. Missing required attributes (index, position, normal or uv)");return}let i=e.position,s=e.normal,r=e.uv,o=this.getAttribute("tangent");(o===void 0||o.count!==i.count)&&(o=new $e(new Float32Array(4*i.count),4),this.setAttribute("tangent",o));let a=[],l=[],u=new Uint8Array(i.count);for(let L=0;L<i.count;L++)a[L]=new N,l[L]=new N;let h=new N,d=new N,p=new N,f=new at,g=new at,_=new at,v=new N,m=new N;function y(L,R,P){u[L]=u[R]=u[P]=1,h.fromBufferAttribute(i,L),d.fromBufferAttribute(i,R),p.fromBufferAttribute(i,P),f.fromBufferAttribute(r,L),g.fromBufferAttribute(r,R),_.fromBufferAttribute(r,P),d.sub(h),p.sub(h),g.sub(f),_.sub(f);let O=1/(g.x*_.y-_.x*g.y);isFinite(O)&&(v.copy(d).multiplyScalar(_.y).addScaledVector(p,-g.y).multiplyScalar(O),m.copy(p).multiplyScalar(g.x).addScaledVector(d,-_.x).multiplyScalar(O),a[L].add(v),a[R].add(v),a[P].add(v),l[L].add(m),l[R].add(m),l[P].add(m))}let M=this.groups;M.length===0&&(M=[{start:0,count:t.count}]);for(let L=0,R=M.length;L<R;++L){let P=M[L],O=P.start,B=P.count;for(let I=O,W=O+B;I<W;I+=3)y(t.getX(I+0),t.getX(I+1),t.getX(I+2))}let b=new N,E=new N,A=new N,x=new N;function T(L){A.fromBufferAttribute(s,L),x.copy(A);let R=a[L];b.copy(R),b.sub(A.multiplyScalar(A.dot(R))).normalize(),E.crossVectors(x,R);let O=E.dot(l[L])<0?-1:1;o.setXYZW(L,b.x,b.y,b.z,O)}for(let L=0,R=i.count;L<R;++L)u[L]&&T(L);this._transformed=!0}computeVertexNormals(){let t=this.index,e=this.getAttribute("position");if(e!==void 0){let i=this.getAttribute("normal");if(i===void 0||i.count!==e.count)i=new $e(new Float32Array(e.count*3),3),this.setAttribute("normal",i);else for(let p=0,f=i.count;p<f;p++)i.setXYZ(p,0,0,0);let s=new N,r=new N,o=new N,a=new N,l=new N,u=new N,h=new N,d=new N;if(t)for(let p=0,f=t.count;p<f;p+=3){let g=t.getX(p+0),_=t.getX(p+1),v=t.getX(p+2);s.fromBufferAttribute(e,g),r.fromBufferAttribute(e,_),o.fromBufferAttribute(e,v),h.subVectors(o,r),d.subVectors(s,r),h.cross(d),a.fromBufferAttribute(i,g),l.fromBufferAttribute(i,_),u.fromBufferAttribute(i,v),a.add(h),l.add(h),u.add(h),i.setXYZ(g,a.x,a.y,a.z),i.setXYZ(_,l.x,l.y,l.z),i.setXYZ(v,u.x,u.y,u.z)}else for(let p=0,f=e.count;p<f;p+=3)s.fromBufferAttribute(e,p+0),r.fromBufferAttribute(e,p+1),o.fromBufferAttribute(e,p+2),h.subVectors(o,r),d.subVectors(s,r),h.cross(d),i.setXYZ(p+0,h.x,h.y,h.z),i.setXYZ(p+1,h.x,h.y,h.z),i.setXYZ(p+2,h.x,h.y,h.z);this.normalizeNormals(),i.needsUpdate=!0}}normalizeNormals(){let t=this.attributes.normal;for(let e=0,i=t.count;e<i;e++)Qe.fromBufferAttribute(t,e),Qe.normalize(),t.setXYZ(e,Qe.x,Qe.y,Qe.z)}toNonIndexed(){function t(a,l){let u=a.array,h=a.itemSize,d=a.normalized,p=new u.constructor(l.length*h),f=0,g=0;for(let _=0,v=l.length;_<v;_++){a.isInterleavedBufferAttribute?f=l[_]*a.data.stride+a.offset:f=l[_]*h;for(let m=0;m<h;m++)p[g++]=u[f++]}return new $e(p,h,d)}if(this.index===null)return Nt("BufferGeometry.toNonIndexed(): BufferGeometry is already non-indexed."),this;let e=new n,i=this.index.array,s=this.attributes;for(let a in s){let l=s[a],u=t(l,i);e.setAttribute(a,u)}let r=this.morphAttributes;for(let a in r){let l=[],u=r[a];for(let h=0,d=u.length;h<d;h++){let p=u[h],f=t(p,i);l.push(f)}e.morphAttributes[a]=l}e.morphTargetsRelative=this.morphTargetsRelative;let o=this.groups;for(let a=0,l=o.length;a<l;a++){let u=o[a];e.addGroup(u.start,u.count,u.materialIndex)}return e}toJSON(){let t={metadata:{version:4.7,type:"BufferGeometry",generator:"BufferGeometry.toJSON"}};if(t.uuid=this.uuid,t.type=this.parameters!==void 0&&this._transformed===!0?"BufferGeometry":this.type,t.name=this.name,Object.keys(this.userData).length>0&&(t.userData=this.userData),this.parameters!==void 0&&this._transformed!==!0){let l=this.parameters;for(let u in l)l[u]!==void 0&&(t[u]=l[u]);return t}t.data={attributes:{}};let e=this.index;e!==null&&(t.data.index={type:e.array.constructor.name,array:Array.prototype.slice.call(e.array)});let i=this.attributes;for(let l in i){let u=i[l];t.data.attributes[l]=u.toJSON(t.data)}let s={},r=!1;for(let l in this.morphAttributes){let u=this.morphAttributes[l],h=[];for(let d=0,p=u.length;d<p;d++){let f=u[d];h.push(f.toJSON(t.data))}h.length>0&&(s[l]=h,r=!0)}r&&(t.data.morphAttributes=s,t.data.morphTargetsRelative=this.morphTargetsRelative);let o=this.groups;o.length>0&&(t.data.groups=JSON.parse(JSON.stringify(o)));let a=this.boundingSphere;return a!==null&&(t.data.boundingSphere=a.toJSON()),t}clone(){return new this.constructor().copy(this)}copy(t){this.index=null,this.attributes={},this.morphAttributes={},this.groups=[],this.boundingBox=null,this.boundingSphere=null;let e={};this.name=t.name;let i=t.index;i!==null&&this.setIndex(i.clone());let s=t.attributes;for(let u in s){let h=s[u];this.setAttribute(u,h.clone(e))}let r=t.morphAttributes;for(let u in r){let h=[],d=r[u];for(let p=0,f=d.length;p<f;p++)h.push(d[p].clone(e));this.morphAttributes[u]=h}this.morphTargetsRelative=t.morphTargetsRelative;let o=t.groups;for(let u=0,h=o.length;u<h;u++){let d=o[u];this.addGroup(d.start,d.count,d.materialIndex)}let a=t.boundingBox;a!==null&&(this.boundingBox=a.clone());let l=t.boundingSphere;return l!==null&&(this.boundingSphere=l.clone()),this.drawRange.start=t.drawRange.start,this.drawRange.count=t.drawRange.count,this.userData=t.userData,this._transformed=t._transformed,this}dispose(){this.dispatchEvent({type:"dispose"})}};var $d=new N,Lb=new N,Nb=new Gt,Fn=class{constructor(t=new N(1,0,0),e=0){this.isPlane=!0,this.normal=t,this.constant=e}set(t,e){return this.normal.copy(t),this.constant=e,this}setComponents(t,e,i,s){return this.normal.set(t,e,i),this.constant=s,this}setFromNormalAndCoplanarPoint(t,e){return this.normal.copy(t),this.constant=-e.dot(this.normal),this}setFromCoplanarPoints(t,e,i){let s=$d.subVectors(i,e).cross(Lb.subVectors(t,e)).normalize();return this.setFromNormalAndCoplanarPoint(s,t),this}copy(t){return this.normal.copy(t.normal),this.constant=t.constant,this}normalize(){let t=1/this.normal.length();return this.normal.multiplyScalar(t),this.constant*=t,this}negate(){return this.constant*=-1,this.normal.negate(),this}distanceToPoint(t){return this.normal.dot(t)+this.constant}distanceToSphere(t){return this.distanceToPoint(t.center)-t.radius}projectPoint(t,e){return e.copy(t).addScaledVector(this.normal,-this.distanceToPoint(t))}intersectLine(t,e,i=!0){let s=t.delta($d),r=this.normal.dot(s);if(r===0)return this.distanceToPoint(t.start)===0?e.copy(t.start):null;let o=-(t.start.dot(this.normal)+this.constant)/r;return i===!0&&(o<0||o>1)?null:e.copy(t.start).addScaledVector(s,o)}intersectsLine(t){let e=this.distanceToPoint(t.start),i=this.distanceToPoint(t.end);return e<0&&i>0||i<0&&e>0}intersectsBox(t){return t.intersectsPlane(this)}intersectsSphere(t){return t.intersectsPlane(this)}coplanarPoint(t){return t.copy(this.normal).multiplyScalar(-this.constant)}applyMatrix4(t,e){let i=e||Nb.getNormalMatrix(t),s=this.coplanarPoint($d).applyMatrix4(t),r=this.normal.applyMatrix3(i).normalize();return this.constant=-s.dot(r),this}translate(t){return this.constant-=t.dot(this.normal),this}equals(t){return t.normal.equals(this.normal)&&t.constant===this.constant}clone(){return new this.constructor().copy(this)}toJSON(){return{normal:this.normal.toArray(),constant:this.constant}}fromJSON(t){return this.normal.fromArray(t.normal),this.constant=t.constant,this}},Ub=0,xi=class extends ui{constructor(){super(),this.isMaterial=!0,Object.defineProperty(this,"id",{value:Ub++}),this.uuid=tr(),this.name="",this.type="Material",this.blending=oo,this.side=ws,this.vertexColors=!1,this.opacity=1,this.transparent=!1,this.alphaHash=!1,this.blendSrc=pf,this.blendDst=mf,this.blendEquation=Ks,this.blendSrcAlpha=null,this.blendDstAlpha=null,this.blendEquationAlpha=null,this.blendColor=new Xt(0,0,0),this.blendAlpha=0,this.depthFunc=Xr,this.depthTest=!0,this.depthWrite=!0,this.stencilWriteMask=255,this.stencilFunc=V0,this.stencilRef=0,this.stencilFuncMask=255,this.stencilFail=Tc,this.stencilZFail=Tc,this.stencilZPass=Tc,this.stencilWrite=!1,this.clippingPlanes=null,this.clipIntersection=!1,this.clipShadows=!1,this.shadowSide=null,this.colorWrite=!0,this.precision=null,this.polygonOffset=!1,this.polygonOffsetFactor=0,this.polygonOffsetUnits=0,this.dithering=!1,this.alphaToCoverage=!1,this.premultipliedAlpha=!1,this.forceSinglePass=!1,this.allowOverride=!0,this.visible=!0,this.toneMapped=!0,this.userData={},this.version=0,this._alphaTest=0}get alphaTest(){return this._alphaTest}set alphaTest(t){this._alphaTest>0!=t>0&&this.version++,this._alphaTest=t}onBeforeRender(){}onBeforeCompile(){}customProgramCacheKey(){return this.onBeforeCompile.toString()}setValues(t){if(t!==void 0)for(let e in t){let i=t[e];if(i===void 0){Nt(`Material: parameter '${e}' has value of undefined.`);continue}let s=this[e];if(s===void 0){Nt(`Material: '${e}' is not a property of THREE.${this.type}.`);continue}s&&s.isColor?s.set(i):s&&s.isVector2&&i&&i.isVector2||s&&s.isEuler&&i&&i.isEuler||s&&s.isVector3&&i&&i.isVector3?s.copy(i):this[e]=i}}toJSON(t){let e=t===void 0||typeof t=="string";e&&(t={textures:{},images:{}});let i={metadata:{version:4.7,type:"Material",generator:"Material.toJSON"}};i.uuid=this.uuid,i.type=this.type,i.blending=this.blending,i.side=this.side,i.shadowSide=this.shadowSide,i.vertexColors=this.vertexColors,i.opacity=this.opacity,i.transparent=this.transparent,i.blendSrc=this.blendSrc,i.blendDst=this.blendDst,i.blendEquation=this.blendEquation,i.blendSrcAlpha=this.blendSrcAlpha,i.blendDstAlpha=this.blendDstAlpha,i.blendEquationAlpha=this.blendEquationAlpha,i.blendColor=this.blendColor.getHex(),i.blendAlpha=this.blendAlpha,i.depthFunc=this.depthFunc,i.depthTest=this.depthTest,i.depthWrite=this.depthWrite,i.colorWrite=this.colorWrite,i.clipIntersection=this.clipIntersection,i.clipShadows=this.clipShadows,i.stencilWriteMask=this.stencilWriteMask,i.stencilFunc=this.stencilFunc,i.stencilRef=this.stencilRef,i.stencilFuncMask=this.stencilFuncMask,i.stencilFail=this.stencilFail,i.stencilZFail=this.stencilZFail,i.stencilZPass=this.stencilZPass,i.stencilWrite=this.stencilWrite,i.polygonOffset=this.polygonOffset,i.polygonOffsetFactor=this.polygonOffsetFactor,i.polygonOffsetUnits=this.polygonOffsetUnits,i.dithering=this.dithering,i.alphaTest=this.alphaTest,i.alphaHash=this.alphaHash,i.alphaToCoverage=this.alphaToCoverage,i.premultipliedAlpha=this.premultipliedAlpha,i.forceSinglePass=this.forceSinglePass,i.allowOverride=this.allowOverride,i.visible=this.visible,i.toneMapped=this.toneMapped,i.name=this.name,this.color&&this.color.isColor&&(i.color=this.color.getHex()),this.roughness!==void 0&&(i.roughness=this.roughness),this.metalness!==void 0&&(i.metalness=this.metalness),this.sheen!==void 0&&(i.sheen=this.sheen),this.sheenColor&&this.sheenColor.isColor&&(i.sheenColor=this.sheenColor.getHex()),this.sheenRoughness!==void 0&&(i.sheenRoughness=this.sheenRoughness),this.emissive&&this.emissive.isColor&&(i.emissive=this.emissive.getHex()),this.emissiveIntensity!==void 0&&(i.emissiveIntensity=this.emissiveIntensity),this.specular&&this.specular.isColor&&(i.specular=this.specular.getHex()),this.specularIntensity!==void 0&&(i.specularIntensity=this.specularIntensity),this.specularColor&&this.specularColor.isColor&&(i.specularColor=this.specularColor.getHex()),this.shininess!==void 0&&(i.shininess=this.shininess),this.clearcoat!==void 0&&(i.clearcoat=this.clearcoat),this.clearcoatRoughness!==void 0&&(i.clearcoatRoughness=this.clearcoatRoughness),this.diffuseRoughness!==void 0&&(i.diffuseRoughness=this.diffuseRoughness),this.diffuseRoughnessMap&&this.diffuseRoughnessMap.isTexture&&(i.diffuseRoughnessMap=this.diffuseRoughnessMap.toJSON(t).uuid),this.clearcoatMap&&this.clearcoatMap.isTexture&&(i.clearcoatMap=this.clearcoatMap.toJSON(t).uuid),this.clearcoatRoughnessMap&&this.clearcoatRoughnessMap.isTexture&&(i.clearcoatRoughnessMap=this.clearcoatRoughnessMap.toJSON(t).uuid),this.clearcoatNormalMap&&this.clearcoatNormalMap.isTexture&&(i.clearcoatNormalMap=this.clearcoatNormalMap.toJSON(t).uuid,i.clearcoatNormalScale=this.clearcoatNormalScale.toArray()),this.sheenColorMap&&this.sheenColorMap.isTexture&&(i.sheenColorMap=this.sheenColorMap.toJSON(t).uuid),this.sheenRoughnessMap&&this.sheenRoughnessMap.isTexture&&(i.sheenRoughnessMap=this.sheenRoughnessMap.toJSON(t).uuid),this.dispersion!==void 0&&(i.dispersion=this.dispersion),this.retroreflectivity!==void 0&&(i.retroreflectivity=this.retroreflectivity),this.iridescence!==void 0&&(i.iridescence=this.iridescence),this.iridescenceIOR!==void 0&&(i.iridescenceIOR=this.iridescenceIOR),this.iridescenceThicknessMinimum!==void 0&&(i.iridescenceThicknessMinimum=this.iridescenceThicknessMinimum),this.iridescenceThicknessMaximum!==void 0&&(i.iridescenceThicknessMaximum=this.iridescenceThicknessMaximum),this.iridescenceMap&&this.iridescenceMap.isTexture&&(i.iridescenceMap=this.iridescenceMap.toJSON(t).uuid),this.iridescenceThicknessMap&&this.iridescenceThicknessMap.isTexture&&(i.iridescenceThicknessMap=this.iridescenceThicknessMap.toJSON(t).uuid),this.anisotropy!==void 0&&(i.anisotropy=this.anisotropy),this.anisotropyRotation!==void 0&&(i.anisotropyRotation=this.anisotropyRotation),this.anisotropyMap&&this.anisotropyMap.isTexture&&(i.anisotropyMap=this.anisotropyMap.toJSON(t).uuid),this.map&&this.map.isTexture&&(i.map=this.map.toJSON(t).uuid),this.matcap&&this.matcap.isTexture&&(i.matcap=this.matcap.toJSON(t).uuid),this.alphaMap&&this.alphaMap.isTexture&&(i.alphaMap=this.alphaMap.toJSON(t).uuid),this.lightMap&&this.lightMap.isTexture&&(i.lightMap=this.lightMap.toJSON(t).uuid,i.lightMapIntensity=this.lightMapIntensity),this.aoMap&&this.aoMap.isTexture&&(i.aoMap=this.aoMap.toJSON(t).uuid,i.aoMapIntensity=this.aoMapIntensity),this.bumpMap&&this.bumpMap.isTexture&&(i.bumpMap=this.bumpMap.toJSON(t).uuid,i.bumpScale=this.bumpScale),this.normalMap&&this.normalMap.isTexture&&(i.normalMap=this.normalMap.toJSON(t).uuid,i.normalMapType=this.normalMapType,i.normalScale=this.normalScale.toArray()),this.displacementMap&&this.displacementMap.isTexture&&(i.displacementMap=this.displacementMap.toJSON(t).uuid,i.displacementScale=this.displacementScale,i.displacementBias=this.displacementBias),this.roughnessMap&&this.roughnessMap.isTexture&&(i.roughnessMap=this.roughnessMap.toJSON(t).uuid),this.metalnessMap&&this.metalnessMap.isTexture&&(i.metalnessMap=this.metalnessMap.toJSON(t).uuid),this.emissiveMap&&this.emissiveMap.isTexture&&(i.emissiveMap=this.emissiveMap.toJSON(t).uuid),this.specularMap&&this.specularMap.isTexture&&(i.specularMap=this.specularMap.toJSON(t).uuid),this.specularIntensityMap&&this.specularIntensityMap.isTexture&&(i.specularIntensityMap=this.specularIntensityMap.toJSON(t).uuid),this.specularColorMap&&this.specularColorMap.isTexture&&(i.specularColorMap=this.specularColorMap.toJSON(t).uuid),this.envMap&&this.envMap.isTexture&&(i.envMap=this.envMap.toJSON(t).uuid,this.combine!==void 0&&(i.combine=this.combine)),this.envMapRotation!==void 0&&(i.envMapRotation=this.envMapRotation.toArray()),this.envMapIntensity!==void 0&&(i.envMapIntensity=this.envMapIntensity),this.reflectivity!==void 0&&(i.reflectivity=this.reflectivity),this.refractionRatio!==void 0&&(i.refractionRatio=this.refractionRatio),this.gradientMap&&this.gradientMap.isTexture&&(i.gradientMap=this.gradientMap.toJSON(t).uuid),this.transmission!==void 0&&(i.transmission=this.transmission),this.transmissionMap&&this.transmissionMap.isTexture&&(i.transmissionMap=this.transmissionMap.toJSON(t).uuid),this.thickness!==void 0&&(i.thickness=this.thickness),this.thicknessMap&&this.thicknessMap.isTexture&&(i.thicknessMap=this.thicknessMap.toJSON(t).uuid),this.attenuationDistance!==void 0&&(i.attenuationDistance=this.attenuationDistance),this.attenuationColor!==void 0&&(i.attenuationColor=this.attenuationColor.getHex()),this.size!==void 0&&(i.size=this.size),this.sizeAttenuation!==void 0&&(i.sizeAttenuation=this.sizeAttenuation),Array.isArray(this.clippingPlanes)&&this.clippingPlanes.length>0&&(i.clippingPlanes=this.clippingPlanes.map(r=>r.toJSON())),this.rotation!==void 0&&(i.rotation=this.rotation),this.depthPacking!==void 0&&(i.depthPacking=this.depthPacking),this.linewidth!==void 0&&(i.linewidth=this.linewidth),this.linecap!==void 0&&(i.linecap=this.linecap),this.linejoin!==void 0&&(i.linejoin=this.linejoin),this.dashSize!==void 0&&(i.dashSize=this.dashSize),this.gapSize!==void 0&&(i.gapSize=this.gapSize),this.scale!==void 0&&(i.scale=this.scale),this.wireframe!==void 0&&(i.wireframe=this.wireframe),this.wireframeLinewidth!==void 0&&(i.wireframeLinewidth=this.wireframeLinewidth),this.wireframeLinecap!==void 0&&(i.wireframeLinecap=this.wireframeLinecap),this.wireframeLinejoin!==void 0&&(i.wireframeLinejoin=this.wireframeLinejoin),this.flatShading!==void 0&&(i.flatShading=this.flatShading),this.fog!==void 0&&(i.fog=this.fog),Object.keys(this.userData).length>0&&(i.userData=this.userData);function s(r){let o=[];for(let a in r){let l=r[a];delete l.metadata,o.push(l)}return o}if(e){let r=s(t.textures),o=s(t.images);r.length>0&&(i.textures=r),o.length>0&&(i.images=o)}return i}fromJSON(t,e){if(t.uuid!==void 0&&(this.uuid=t.uuid),t.name!==void 0&&(this.name=t.name),t.color!==void 0&&this.color!==void 0&&this.color.setHex(t.color),t.roughness!==void 0&&(this.roughness=t.roughness),t.metalness!==void 0&&(this.metalness=t.metalness),t.sheen!==void 0&&(this.sheen=t.sheen),t.sheenColor!==void 0&&(this.sheenColor=new Xt().setHex(t.sheenColor)),t.sheenRoughness!==void 0&&(this.sheenRoughness=t.sheenRoughness),t.emissive!==void 0&&this.emissive!==void 0&&this.emissive.setHex(t.emissive),t.specular!==void 0&&this.specular!==void 0&&this.specular.setHex(t.specular),t.specularIntensity!==void 0&&(this.specularIntensity=t.specularIntensity),t.specularColor!==void 0&&this.specularColor!==void 0&&this.specularColor.setHex(t.specularColor),t.shininess!==void 0&&(this.shininess=t.shininess),t.clearcoat!==void 0&&(this.clearcoat=t.clearcoat),t.clearcoatRoughness!==void 0&&(this.clearcoatRoughness=t.clearcoatRoughness),t.diffuseRoughness!==void 0&&(this.diffuseRoughness=t.diffuseRoughness),t.dispersion!==void 0&&(this.dispersion=t.dispersion),t.retroreflectivity!==void 0&&(this.retroreflectivity=t.retroreflectivity),t.iridescence!==void 0&&(this.iridescence=t.iridescence),t.iridescenceIOR!==void 0&&(this.iridescenceIOR=t.iridescenceIOR),t.iridescenceThicknessMinimum!==void 0&&(this.iridescenceThicknessMinimum=t.iridescenceThicknessMinimum),t.iridescenceThicknessMaximum!==void 0&&(this.iridescenceThicknessMaximum=t.iridescenceThicknessMaximum),t.iridescenceThicknessRange!==void 0&&(this.iridescenceThicknessMinimum=t.iridescenceThicknessRange[0],this.iridescenceThicknessMaximum=t.iridescenceThicknessRange[1]),t.transmission!==void 0&&(this.transmission=t.transmission),t.thickness!==void 0&&(this.thickness=t.thickness),t.attenuationDistance!==void 0&&(this.attenuationDistance=t.attenuationDistance),t.attenuationColor!==void 0&&this.attenuationColor!==void 0&&this.attenuationColor.setHex(t.attenuationColor),t.anisotropy!==void 0&&(this.anisotropy=t.anisotropy),t.anisotropyRotation!==void 0&&(this.anisotropyRotation=t.anisotropyRotation),t.fog!==void 0&&(this.fog=t.fog),t.flatShading!==void 0&&(this.flatShading=t.flatShading),t.blending!==void 0&&(this.blending=t.blending),t.combine!==void 0&&(this.combine=t.combine),t.side!==void 0&&(this.side=t.side),t.shadowSide!==void 0&&(this.shadowSide=t.shadowSide),t.opacity!==void 0&&(this.opacity=t.opacity),t.transparent!==void 0&&(this.transparent=t.transparent),t.alphaTest!==void 0&&(this.alphaTest=t.alphaTest),t.alphaHash!==void 0&&(this.alphaHash=t.alphaHash),t.depthFunc!==void 0&&(this.depthFunc=t.depthFunc),t.depthTest!==void 0&&(this.depthTest=t.depthTest),t.depthWrite!==void 0&&(this.depthWrite=t.depthWrite),t.colorWrite!==void 0&&(this.colorWrite=t.colorWrite),t.clippingPlanes!==void 0&&(this.clippingPlanes=t.clippingPlanes.map(i=>new Fn().fromJSON(i))),t.clipIntersection!==void 0&&(this.clipIntersection=t.clipIntersection),t.clipShadows!==void 0&&(this.clipShadows=t.clipShadows),t.depthPacking!==void 0&&(this.depthPacking=t.depthPacking),t.blendSrc!==void 0&&(this.blendSrc=t.blendSrc),t.blendDst!==void 0&&(this.blendDst=t.blendDst),t.blendEquation!==void 0&&(this.blendEquation=t.blendEquation),t.blendSrcAlpha!==void 0&&(this.blendSrcAlpha=t.blendSrcAlpha),t.blendDstAlpha!==void 0&&(this.blendDstAlpha=t.blendDstAlpha),t.blendEquationAlpha!==void 0&&(this.blendEquationAlpha=t.blendEquationAlpha),t.blendColor!==void 0&&this.blendColor!==void 0&&this.blendColor.setHex(t.blendColor),t.blendAlpha!==void 0&&(this.blendAlpha=t.blendAlpha),t.stencilWriteMask!==void 0&&(this.stencilWriteMask=t.stencilWriteMask),t.stencilFunc!==void 0&&(this.stencilFunc=t.stencilFunc),t.stencilRef!==void 0&&(this.stencilRef=t.stencilRef),t.stencilFuncMask!==void 0&&(this.stencilFuncMask=t.stencilFuncMask),t.stencilFail!==void 0&&(this.stencilFail=t.stencilFail),t.stencilZFail!==void 0&&(this.stencilZFail=t.stencilZFail),t.stencilZPass!==void 0&&(this.stencilZPass=t.stencilZPass),t.stencilWrite!==void 0&&(this.stencilWrite=t.stencilWrite),t.wireframe!==void 0&&(this.wireframe=t.wireframe),t.wireframeLinewidth!==void 0&&(this.wireframeLinewidth=t.wireframeLinewidth),t.wireframeLinecap!==void 0&&(this.wireframeLinecap=t.wireframeLinecap),t.wireframeLinejoin!==void 0&&(this.wireframeLinejoin=t.wireframeLinejoin),t.rotation!==void 0&&(this.rotation=t.rotation),t.linewidth!==void 0&&(this.linewidth=t.linewidth),t.linecap!==void 0&&(this.linecap=t.linecap),t.linejoin!==void 0&&(this.linejoin=t.linejoin),t.dashSize!==void 0&&(this.dashSize=t.dashSize),t.gapSize!==void 0&&(this.gapSize=t.gapSize),t.scale!==void 0&&(this.scale=t.scale),t.polygonOffset!==void 0&&(this.polygonOffset=t.polygonOffset),t.polygonOffsetFactor!==void 0&&(this.polygonOffsetFactor=t.polygonOffsetFactor),t.polygonOffsetUnits!==void 0&&(this.polygonOffsetUnits=t.polygonOffsetUnits),t.dithering!==void 0&&(this.dithering=t.dithering),t.alphaToCoverage!==void 0&&(this.alphaToCoverage=t.alphaToCoverage),t.premultipliedAlpha!==void 0&&(this.premultipliedAlpha=t.premultipliedAlpha),t.forceSinglePass!==void 0&&(this.forceSinglePass=t.forceSinglePass),t.allowOverride!==void 0&&(this.allowOverride=t.allowOverride),t.visible!==void 0&&(this.visible=t.visible),t.toneMapped!==void 0&&(this.toneMapped=t.toneMapped),t.userData!==void 0&&(this.userData=t.userData),t.vertexColors!==void 0&&(typeof t.vertexColors=="number"?this.vertexColors=t.vertexColors>0:this.vertexColors=t.vertexColors),t.size!==void 0&&(this.size=t.size),t.sizeAttenuation!==void 0&&(this.sizeAttenuation=t.sizeAttenuation),t.map!==void 0&&(this.map=e[t.map]||null),t.matcap!==void 0&&(this.matcap=e[t.matcap]||null),t.alphaMap!==void 0&&(this.alphaMap=e[t.alphaMap]||null),t.bumpMap!==void 0&&(this.bumpMap=e[t.bumpMap]||null),t.bumpScale!==void 0&&(this.bumpScale=t.bumpScale),t.normalMap!==void 0&&(this.normalMap=e[t.normalMap]||null),t.normalMapType!==void 0&&(this.normalMapType=t.normalMapType),t.normalScale!==void 0){let i=t.normalScale;Array.isArray(i)===!1&&(i=[i,i]),this.normalScale=new at().fromArray(i)}return t.displacementMap!==void 0&&(this.displacementMap=e[t.displacementMap]||null),t.displacementScale!==void 0&&(this.displacementScale=t.displacementScale),t.displacementBias!==void 0&&(this.displacementBias=t.displacementBias),t.roughnessMap!==void 0&&(this.roughnessMap=e[t.roughnessMap]||null),t.metalnessMap!==void 0&&(this.metalnessMap=e[t.metalnessMap]||null),t.emissiveMap!==void 0&&(this.emissiveMap=e[t.emissiveMap]||null),t.emissiveIntensity!==void 0&&(this.emissiveIntensity=t.emissiveIntensity),t.specularMap!==void 0&&(this.specularMap=e[t.specularMap]||null),t.specularIntensityMap!==void 0&&(this.specularIntensityMap=e[t.specularIntensityMap]||null),t.specularColorMap!==void 0&&(this.specularColorMap=e[t.specularColorMap]||null),t.envMap!==void 0&&(this.envMap=e[t.envMap]||null),t.envMapRotation!==void 0&&this.envMapRotation.fromArray(t.envMapRotation),t.envMapIntensity!==void 0&&(this.envMapIntensity=t.envMapIntensity),t.reflectivity!==void 0&&(this.reflectivity=t.reflectivity),t.refractionRatio!==void 0&&(this.refractionRatio=t.refractionRatio),t.lightMap!==void 0&&(this.lightMap=e[t.lightMap]||null),t.lightMapIntensity!==void 0&&(this.lightMapIntensity=t.lightMapIntensity),t.aoMap!==void 0&&(this.aoMap=e[t.aoMap]||null),t.aoMapIntensity!==void 0&&(this.aoMapIntensity=t.aoMapIntensity),t.gradientMap!==void 0&&(this.gradientMap=e[t.gradientMap]||null),t.clearcoatMap!==void 0&&(this.clearcoatMap=e[t.clearcoatMap]||null),t.clearcoatRoughnessMap!==void 0&&(this.clearcoatRoughnessMap=e[t.clearcoatRoughnessMap]||null),t.clearcoatNormalMap!==void 0&&(this.clearcoatNormalMap=e[t.clearcoatNormalMap]||null),t.clearcoatNormalScale!==void 0&&(this.clearcoatNormalScale=new at().fromArray(t.clearcoatNormalScale)),t.diffuseRoughnessMap!==void 0&&(this.diffuseRoughnessMap=e[t.diffuseRoughnessMap]||null),t.iridescenceMap!==void 0&&(this.iridescenceMap=e[t.iridescenceMap]||null),t.iridescenceThicknessMap!==void 0&&(this.iridescenceThicknessMap=e[t.iridescenceThicknessMap]||null),t.transmissionMap!==void 0&&(this.transmissionMap=e[t.transmissionMap]||null),t.thicknessMap!==void 0&&(this.thicknessMap=e[t.thicknessMap]||null),t.anisotropyMap!==void 0&&(this.anisotropyMap=e[t.anisotropyMap]||null),t.sheenColorMap!==void 0&&(this.sheenColorMap=e[t.sheenColorMap]||null),t.sheenRoughnessMap!==void 0&&(this.sheenRoughnessMap=e[t.sheenRoughnessMap]||null),this}clone(){return new this.constructor().copy(this)}copy(t){this.name=t.name,this.blending=t.blending,this.side=t.side,this.vertexColors=t.vertexColors,this.opacity=t.opacity,this.transparent=t.transparent,this.blendSrc=t.blendSrc,this.blendDst=t.blendDst,this.blendEquation=t.blendEquation,this.blendSrcAlpha=t.blendSrcAlpha,this.blendDstAlpha=t.blendDstAlpha,this.blendEquationAlpha=t.blendEquationAlpha,this.blendColor.copy(t.blendColor),this.blendAlpha=t.blendAlpha,this.depthFunc=t.depthFunc,this.depthTest=t.depthTest,this.depthWrite=t.depthWrite,this.stencilWriteMask=t.stencilWriteMask,this.stencilFunc=t.stencilFunc,this.stencilRef=t.stencilRef,this.stencilFuncMask=t.stencilFuncMask,this.stencilFail=t.stencilFail,this.stencilZFail=t.stencilZFail,this.stencilZPass=t.stencilZPass,this.stencilWrite=t.stencilWrite;let e=t.clippingPlanes,i=null;if(e!==null){let s=e.length;i=new Array(s);for(let r=0;r!==s;++r)i[r]=e[r].clone()}return this.clippingPlanes=i,this.clipIntersection=t.clipIntersection,this.clipShadows=t.clipShadows,this.shadowSide=t.shadowSide,this.colorWrite=t.colorWrite,this.precision=t.precision,this.polygonOffset=t.polygonOffset,this.polygonOffsetFactor=t.polygonOffsetFactor,this.polygonOffsetUnits=t.polygonOffsetUnits,this.dithering=t.dithering,this.alphaTest=t.alphaTest,this.alphaHash=t.alphaHash,this.alphaToCoverage=t.alphaToCoverage,this.premultipliedAlpha=t.premultipliedAlpha,this.forceSinglePass=t.forceSinglePass,this.allowOverride=t.allowOverride,this.visible=t.visible,this.toneMapped=t.toneMapped,this.userData=JSON.parse(JSON.stringify(t.userData)),this}dispose(){this.dispatchEvent({type:"dispose"})}set needsUpdate(t){t===!0&&this.version++}};var Gi=new N,Xd=new N,sc=new N,rc=new N,ds=class{constructor(t=new N,e=new N(0,0,-1)){this.origin=t,this.direction=e}set(t,e){return this.origin.copy(t),this.direction.copy(e),this}copy(t){return this.origin.copy(t.origin),this.direction.copy(t.direction),this}at(t,e){return e.copy(this.origin).addScaledVector(this.direction,t)}lookAt(t){return this.direction.copy(t).sub(this.origin).normalize(),this}recast(t){return this.origin.copy(this.at(t,Gi)),this}closestPointToPoint(t,e){e.subVectors(t,this.origin);let i=e.dot(this.direction);return i<0?e.copy(this.origin):e.copy(this.origin).addScaledVector(this.direction,i)}distanceToPoint(t){return Math.sqrt(this.distanceSqToPoint(t))}distanceSqToPoint(t){let e=Gi.subVectors(t,this.origin).dot(this.direction);return e<0?this.origin.distanceToSquared(t):(Gi.copy(this.origin).addScaledVector(this.direction,e),Gi.distanceToSquared(t))}distanceSqToSegment(t,e,i,s){Xd.copy(t).add(e).multiplyScalar(.5),sc.copy(e).sub(t).normalize(),rc.copy(this.origin).sub(Xd);let r=t.distanceTo(e)*.5,o=-this.direction.dot(sc),a=rc.dot(this.direction),l=-rc.dot(sc),u=rc.lengthSq(),h=Math.abs(1-o*o),d,p,f,g;if(h>0)if(d=o*l-a,p=o*a-l,g=r*h,d>=0)if(p>=-g)if(p<=g){let _=1/h;d*=_,p*=_,f=d*(d+o*p+2*a)+p*(o*d+p+2*l)+u}else p=r,d=Math.max(0,-(o*p+a)),f=-d*d+p*(p+2*l)+u;else p=-r,d=Math.max(0,-(o*p+a)),f=-d*d+p*(p+2*l)+u;else p<=-g?(d=Math.max(0,-(-o*r+a)),p=d>0?-r:Math.min(Math.max(-r,-l),r),f=-d*d+p*(p+2*l)+u):p<=g?(d=0,p=Math.min(Math.max(-r,-l),r),f=p*(p+2*l)+u):(d=Math.max(0,-(o*r+a)),p=d>0?r:Math.min(Math.max(-r,-l),r),f=-d*d+p*(p+2*l)+u);else p=o>0?-r:r,d=Math.max(0,-(o*p+a)),f=-d*d+p*(p+2*l)+u;return i&&i.copy(this.origin).addScaledVector(this.direction,d),s&&s.copy(Xd).addScaledVector(sc,p),f}intersectSphere(t,e){if(t.radius<0)return null;Gi.subVectors(t.center,this.origin);let i=Gi.dot(this.direction),s=Gi.dot(Gi)-i*i,r=t.radius*t.radius;if(s>r)return null;let o=Math.sqrt(r-s),a=i-o,l=i+o;return l<0?null:a<0?this.at(l,e):this.at(a,e)}intersectsSphere(t){return t.radius<0?!1:this.distanceSqToPoint(t.center)<=t.radius*t.radius}distanceToPlane(t){let e=t.normal.dot(this.direction);if(e===0)return t.distanceToPoint(this.origin)===0?0:null;let i=-(this.origin.dot(t.normal)+t.constant)/e;return i>=0?i:null}intersectPlane(t,e){let i=this.distanceToPlane(t);return i===null?null:this.at(i,e)}intersectsPlane(t){let e=t.distanceToPoint(this.origin);return e===0||t.normal.dot(this.direction)*e<0}intersectBox(t,e){let i,s,r,o,a,l,u=1/this.direction.x,h=1/this.direction.y,d=1/this.direction.z,p=this.origin;return u>=0?(i=(t.min.x-p.x)*u,s=(t.max.x-p.x)*u):(i=(t.max.x-p.x)*u,s=(t.min.x-p.x)*u),h>=0?(r=(t.min.y-p.y)*h,o=(t.max.y-p.y)*h):(r=(t.max.y-p.y)*h,o=(t.min.y-p.y)*h),i>o||r>s||((r>i||isNaN(i))&&(i=r),(o<s||isNaN(s))&&(s=o),d>=0?(a=(t.min.z-p.z)*d,l=(t.max.z-p.z)*d):(a=(t.max.z-p.z)*d,l=(t.min.z-p.z)*d),i>l||a>s)||((a>i||i!==i)&&(i=a),(l<s||s!==s)&&(s=l),s<0)?null:this.at(i>=0?i:s,e)}intersectsBox(t){return this.intersectBox(t,Gi)!==null}intersectTriangle(t,e,i,s,r){let o=this.origin,a=this.direction,l=a.x,u=a.y,h=a.z,d=t.x-o.x,p=t.y-o.y,f=t.z-o.z,g=e.x-o.x,_=e.y-o.y,v=e.z-o.z,m=i.x-o.x,y=i.y-o.y,M=i.z-o.z,b=Math.abs(l),E=Math.abs(u),A=Math.abs(h),x,T,L,R,P,O,B,I,W,$,F,Q;if(b>=E&&b>=A?(L=l,O=d,W=g,Q=m,l>=0?(x=u,T=h,R=p,P=f,B=_,I=v,$=y,F=M):(x=h,T=u,R=f,P=p,B=v,I=_,$=M,F=y)):E>=A?(L=u,O=p,W=_,Q=y,u>=0?(x=h,T=l,R=f,P=d,B=v,I=g,$=M,F=m):(x=l,T=h,R=d,P=f,B=g,I=v,$=m,F=M)):(L=h,O=f,W=v,Q=M,h>=0?(x=l,T=u,R=d,P=p,B=g,I=_,$=m,F=y):(x=u,T=l,R=p,P=d,B=_,I=g,$=y,F=m)),L===0)return null;let G=x/L,tt=T/L,et=1/L,St=R-G*O,Ot=P-tt*O,Z=B-G*W,gt=I-tt*W,wt=$-G*Q,It=F-tt*Q,_t=wt*gt-It*Z,zt=St*It-Ot*wt,Le=Z*Ot-gt*St;if(s){if(_t<0||zt<0||Le<0)return null}else if((_t<0||zt<0||Le<0)&&(_t>0||zt>0||Le>0))return null;let Ut=_t+zt+Le;if(Ut===0)return null;let ae=et*(_t*O+zt*W+Le*Q);return(Ut>0?ae<0:ae>0)?null:this.at(ae/Ut,r)}applyMatrix4(t){return this.origin.applyMatrix4(t),this.direction.transformDirection(t),this}equals(t){return t.origin.equals(this.origin)&&t.direction.equals(this.direction)}clone(){return new this.constructor().copy(this)}},nn=class extends xi{constructor(t){super(),this.isMeshBasicMaterial=!0,this.type="MeshBasicMaterial",this.color=new Xt(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new $i,this.combine=uu,this.reflectivity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.fog=!0,this.setValues(t)}copy(t){return super.copy(t),this.color.copy(t.color),this.map=t.map,this.lightMap=t.lightMap,this.lightMapIntensity=t.lightMapIntensity,this.aoMap=t.aoMap,this.aoMapIntensity=t.aoMapIntensity,this.specularMap=t.specularMap,this.alphaMap=t.alphaMap,this.envMap=t.envMap,this.envMapRotation.copy(t.envMapRotation),this.combine=t.combine,this.reflectivity=t.reflectivity,this.refractionRatio=t.refractionRatio,this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this.wireframeLinecap=t.wireframeLinecap,this.wireframeLinejoin=t.wireframeLinejoin,this.fog=t.fog,this}},Hg=new oe,$s=new ds,oc=new yi,Wg=new N,ac=new N,lc=new N,cc=new N,qd=new N,uc=new N,$g=new N,hc=new N,Oe=class extends en{constructor(t=new me,e=new nn){super(),this.isMesh=!0,this.type="Mesh",this.geometry=t,this.material=e,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.count=1,this.updateMorphTargets()}copy(t,e){return super.copy(t,e),t.morphTargetInfluences!==void 0?this.morphTargetInfluences=t.morphTargetInfluences.slice():this.morphTargetInfluences=void 0,t.morphTargetDictionary!==void 0?this.morphTargetDictionary=Object.assign({},t.morphTargetDictionary):this.morphTargetDictionary=void 0,this.material=Array.isArray(t.material)?t.material.slice():t.material,this.geometry=t.geometry,this}updateMorphTargets(){let e=this.geometry.morphAttributes,i=Object.keys(e);if(i.length>0){let s=e[i[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,o=s.length;r<o;r++){let a=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[a]=r}}}}getVertexPosition(t,e){let i=this.geometry,s=i.attributes.position,r=i.morphAttributes.position,o=i.morphTargetsRelative;e.fromBufferAttribute(s,t);let a=this.morphTargetInfluences;if(r&&a){uc.set(0,0,0);for(let l=0,u=r.length;l<u;l++){let h=a[l],d=r[l];h!==0&&(qd.fromBufferAttribute(d,t),o?uc.addScaledVector(qd,h):uc.addScaledVector(qd.sub(e),h))}e.add(uc)}return e}intersectsFrustum(t){return t.intersectsObject(this)}raycast(t,e){let i=this.geometry,s=this.material,r=this.matrixWorld;s!==void 0&&(i.boundingSphere===null&&i.computeBoundingSphere(),oc.copy(i.boundingSphere),oc.applyMatrix4(r),$s.copy(t.ray).recast(t.near),!(oc.containsPoint($s.origin)===!1&&($s.intersectSphere(oc,Wg)===null||$s.origin.distanceToSquared(Wg)>(t.far-t.near)**2))&&(Hg.copy(r).invert(),$s.copy(t.ray).applyMatrix4(Hg),!(i.boundingBox!==null&&$s.intersectsBox(i.boundingBox)===!1)&&this._computeIntersections(t,e,$s)))}_computeIntersections(t,e,i){let s,r=this.geometry,o=this.material,a=r.index,l=r.attributes.position,u=r.attributes.uv,h=r.attributes.uv1,d=r.attributes.normal,p=r.groups,f=r.drawRange;if(a!==null)if(Array.isArray(o))for(let g=0,_=p.length;g<_;g++){let v=p[g],m=o[v.materialIndex],y=Math.max(v.start,f.start),M=Math.min(a.count,Math.min(v.start+v.count,f.start+f.count));for(let b=y,E=M;b<E;b+=3){let A=a.getX(b),x=a.getX(b+1),T=a.getX(b+2);s=dc(this,m,t,i,u,h,d,A,x,T),s&&(s.faceIndex=Math.floor(b/3),s.face.materialIndex=v.materialIndex,e.push(s))}}else{let g=Math.max(0,f.start),_=Math.min(a.count,f.start+f.count);for(let v=g,m=_;v<m;v+=3){let y=a.getX(v),M=a.getX(v+1),b=a.getX(v+2);s=dc(this,o,t,i,u,h,d,y,M,b),s&&(s.faceIndex=Math.floor(v/3),e.push(s))}}else if(l!==void 0)if(Array.isArray(o))for(let g=0,_=p.length;g<_;g++){let v=p[g],m=o[v.materialIndex],y=Math.max(v.start,f.start),M=Math.min(l.count,Math.min(v.start+v.count,f.start+f.count));for(let b=y,E=M;b<E;b+=3){let A=b,x=b+1,T=b+2;s=dc(this,m,t,i,u,h,d,A,x,T),s&&(s.faceIndex=Math.floor(b/3),s.face.materialIndex=v.materialIndex,e.push(s))}}else{let g=Math.max(0,f.start),_=Math.min(l.count,f.start+f.count);for(let v=g,m=_;v<m;v+=3){let y=v,M=v+1,b=v+2;s=dc(this,o,t,i,u,h,d,y,M,b),s&&(s.faceIndex=Math.floor(v/3),e.push(s))}}}};function Ob(n,t,e,i,s,r,o,a){let l;if(t.side===wn?l=i.intersectTriangle(o,r,s,!0,a):l=i.intersectTriangle(s,r,o,t.side===ws,a),l===null)return null;hc.copy(a),hc.applyMatrix4(n.matrixWorld);let u=e.ray.origin.distanceTo(hc);return u<e.near||u>e.far?null:{distance:u,point:hc.clone(),object:n}}function dc(n,t,e,i,s,r,o,a,l,u){n.getVertexPosition(a,ac),n.getVertexPosition(l,lc),n.getVertexPosition(u,cc);let h=Ob(n,t,e,i,ac,lc,cc,$g);if(h){let d=new N;hs.getBarycoord($g,ac,lc,cc,d),s&&(h.uv=hs.getInterpolatedAttribute(s,a,l,u,d,new at)),r&&(h.uv1=hs.getInterpolatedAttribute(r,a,l,u,d,new at)),o&&(h.normal=hs.getInterpolatedAttribute(o,a,l,u,d,new N),h.normal.dot(i.direction)>0&&h.normal.multiplyScalar(-1));let p={a,b:l,c:u,normal:new N,materialIndex:0};hs.getNormal(ac,lc,cc,p.normal),h.face=p,h.barycoord=d}return h}var _a=class extends En{constructor(t=null,e=1,i=1,s,r,o,a,l,u=tn,h=tn,d,p){super(null,o,a,l,u,h,s,r,d,p),this.isDataTexture=!0,this.image={data:t,width:e,height:i},this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1}};var jr=class extends $e{constructor(t,e,i,s=1){super(t,e,i),this.isInstancedBufferAttribute=!0,this.meshPerAttribute=s}copy(t){return super.copy(t),this.meshPerAttribute=t.meshPerAttribute,this}toJSON(){let t=super.toJSON();return t.meshPerAttribute=this.meshPerAttribute,t.isInstancedBufferAttribute=!0,t}},zr=new oe,Xg=new oe,fc=[],qg=new _i,kb=new oe,ta=new Oe,ea=new yi,ya=class extends Oe{constructor(t,e,i){super(t,e),this.isInstancedMesh=!0,this.instanceMatrix=new jr(new Float32Array(i*16),16),this.instanceColor=null,this.morphTexture=null,this.count=i,this.boundingBox=null,this.boundingSphere=null;for(let s=0;s<i;s++)this.setMatrixAt(s,kb)}computeBoundingBox(){let t=this.geometry,e=this.count;this.boundingBox===null&&(this.boundingBox=new _i),t.boundingBox===null&&t.computeBoundingBox(),this.boundingBox.makeEmpty();for(let i=0;i<e;i++)this.getMatrixAt(i,zr),qg.copy(t.boundingBox).applyMatrix4(zr),this.boundingBox.union(qg)}computeBoundingSphere(){let t=this.geometry,e=this.count;this.boundingSphere===null&&(this.boundingSphere=new yi),t.boundingSphere===null&&t.computeBoundingSphere(),this.boundingSphere.makeEmpty();for(let i=0;i<e;i++)this.getMatrixAt(i,zr),ea.copy(t.boundingSphere).applyMatrix4(zr),this.boundingSphere.union(ea)}copy(t,e){return super.copy(t,e),this.instanceMatrix.copy(t.instanceMatrix),this.morphTexture=t.morphTexture!==null?t.morphTexture.clone():null,this.instanceColor=t.instanceColor!==null?t.instanceColor.clone():null,this.count=t.count,this.boundingBox=t.boundingBox!==null?t.boundingBox.clone():null,this.boundingSphere=t.boundingSphere!==null?t.boundingSphere.clone():null,this}getColorAt(t,e){return this.instanceColor===null?e.setRGB(1,1,1):e.fromArray(this.instanceColor.array,t*3)}getMatrixAt(t,e){return e.fromArray(this.instanceMatrix.array,t*16)}getMorphAt(t,e){let i=e.morphTargetInfluences,s=this.morphTexture.source.data.data,r=i.length+1,o=t*r+1;for(let a=0;a<i.length;a++)i[a]=s[o+a]}raycast(t,e){let i=this.matrixWorld,s=this.count;if(ta.geometry=this.geometry,ta.material=this.material,ta.material!==void 0&&(this.boundingSphere===null&&this.computeBoundingSphere(),ea.copy(this.boundingSphere),ea.applyMatrix4(i),t.ray.intersectsSphere(ea)!==!1))for(let r=0;r<s;r++){this.getMatrixAt(r,zr),Xg.multiplyMatrices(i,zr),ta.matrixWorld=Xg,ta.raycast(t,fc);for(let o=0,a=fc.length;o<a;o++){let l=fc[o];l.instanceId=r,l.object=this,e.push(l)}fc.length=0}}setColorAt(t,e){return this.instanceColor===null&&(this.instanceColor=new jr(new Float32Array(this.instanceMatrix.count*3).fill(1),3)),e.toArray(this.instanceColor.array,t*3),this}setMatrixAt(t,e){return e.toArray(this.instanceMatrix.array,t*16),this}setMorphAt(t,e){let i=e.morphTargetInfluences,s=i.length+1;this.morphTexture===null&&(this.morphTexture=new _a(new Float32Array(s*this.count),s,this.count,vu,jn));let r=this.morphTexture.source.data.data,o=0;for(let u=0;u<i.length;u++)o+=i[u];let a=this.geometry.morphTargetsRelative?1:1-o,l=s*t;return r[l]=a,r.set(i,l+1),this}updateMorphTargets(){}dispose(){super.dispose(),this.instanceMatrix.dispose(),this.instanceColor!==null&&this.instanceColor.dispose(),this.morphTexture!==null&&(this.morphTexture.dispose(),this.morphTexture=null)}},Xs=new yi,Fb=new at(.5,.5),pc=new N,fs=class{constructor(t=new Fn,e=new Fn,i=new Fn,s=new Fn,r=new Fn,o=new Fn){this.planes=[t,e,i,s,r,o]}set(t,e,i,s,r,o){let a=this.planes;return a[0].copy(t),a[1].copy(e),a[2].copy(i),a[3].copy(s),a[4].copy(r),a[5].copy(o),this}copy(t){let e=this.planes;for(let i=0;i<6;i++)e[i].copy(t.planes[i]);return this}setFromProjectionMatrix(t,e=Kn,i=!1){let s=this.planes,r=t.elements,o=r[0],a=r[1],l=r[2],u=r[3],h=r[4],d=r[5],p=r[6],f=r[7],g=r[8],_=r[9],v=r[10],m=r[11],y=r[12],M=r[13],b=r[14],E=r[15];if(s[0].setComponents(u-o,f-h,m-g,E-y).normalize(),s[1].setComponents(u+o,f+h,m+g,E+y).normalize(),s[2].setComponents(u+a,f+d,m+_,E+M).normalize(),s[3].setComponents(u-a,f-d,m-_,E-M).normalize(),i)s[4].setComponents(l,p,v,b).normalize(),s[5].setComponents(u-l,f-p,m-v,E-b).normalize();else if(s[4].setComponents(u-l,f-p,m-v,E-b).normalize(),e===Kn)s[5].setComponents(u+l,f+p,m+v,E+b).normalize();else if(e===qr)s[5].setComponents(l,p,v,b).normalize();else throw new Error("THREE.Frustum.setFromProjectionMatrix(): Invalid coordinate system: "+e);return this}intersectsObject(t){if(t.boundingSphere!==void 0)t.boundingSphere===null&&t.computeBoundingSphere(),Xs.copy(t.boundingSphere).applyMatrix4(t.matrixWorld);else{let e=t.geometry;e.boundingSphere===null&&e.computeBoundingSphere(),Xs.copy(e.boundingSphere).applyMatrix4(t.matrixWorld)}return this.intersectsSphere(Xs)}intersectsSprite(t){Xs.center.set(0,0,0);let e=Fb.distanceTo(t.center);return Xs.radius=.7071067811865476+e,Xs.applyMatrix4(t.matrixWorld),this.intersectsSphere(Xs)}intersectsSphere(t){let e=this.planes,i=t.center,s=-t.radius;for(let r=0;r<6;r++)if(e[r].distanceToPoint(i)<s)return!1;return!0}intersectsBox(t){let e=this.planes;for(let i=0;i<6;i++){let s=e[i];if(pc.x=s.normal.x>0?t.max.x:t.min.x,pc.y=s.normal.y>0?t.max.y:t.min.y,pc.z=s.normal.z>0?t.max.z:t.min.z,s.distanceToPoint(pc)<0)return!1}return!0}containsPoint(t){let e=this.planes;for(let i=0;i<6;i++)if(e[i].distanceToPoint(t)<0)return!1;return!0}clone(){return new this.constructor().copy(this)}},Yg=new oe,Bc=class n{constructor(){this.coordinateSystem=Kn,this._frustums=[],this._count=0}setFromArrayCamera(t){let e=t.cameras,i=this._frustums;for(let s=0;s<e.length;s++){let r=e[s];Yg.multiplyMatrices(r.projectionMatrix,r.matrixWorldInverse),i[s]===void 0&&(i[s]=new fs),i[s].setFromProjectionMatrix(Yg,r.coordinateSystem,r.reversedDepth)}return this._count=e.length,this}getFrustum(t){return this._frustums[t]}intersectsObject(t){let e=this._frustums;for(let i=0;i<this._count;i++)if(e[i].intersectsObject(t))return!0;return!1}intersectsSprite(t){let e=this._frustums;for(let i=0;i<this._count;i++)if(e[i].intersectsSprite(t))return!0;return!1}intersectsSphere(t){let e=this._frustums;for(let i=0;i<this._count;i++)if(e[i].intersectsSphere(t))return!0;return!1}intersectsBox(t){let e=this._frustums;for(let i=0;i<this._count;i++)if(e[i].intersectsBox(t))return!0;return!1}containsPoint(t){let e=this._frustums;for(let i=0;i<this._count;i++)if(e[i].containsPoint(t))return!0;return!1}copy(t){this.coordinateSystem=t.coordinateSystem;let e=this._frustums,i=t._frustums;for(let s=0;s<t._count;s++)e[s]===void 0&&(e[s]=new fs),e[s].copy(i[s]);return this._count=t._count,this}clone(){return new n().copy(this)}};var bi=class extends xi{constructor(t){super(),this.isLineBasicMaterial=!0,this.type="LineBasicMaterial",this.color=new Xt(16777215),this.map=null,this.linewidth=1,this.linecap="round",this.linejoin="round",this.fog=!0,this.setValues(t)}copy(t){return super.copy(t),this.color.copy(t.color),this.map=t.map,this.linewidth=t.linewidth,this.linecap=t.linecap,this.linejoin=t.linejoin,this.fog=t.fog,this}},zc=new N,Vc=new N,Zg=new oe,na=new ds,mc=new yi,Yd=new N,Jg=new N,ps=class extends en{constructor(t=new me,e=new bi){super(),this.isLine=!0,this.type="Line",this.geometry=t,this.material=e,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.updateMorphTargets()}copy(t,e){return super.copy(t,e),t.morphTargetInfluences!==void 0?this.morphTargetInfluences=t.morphTargetInfluences.slice():this.morphTargetInfluences=void 0,t.morphTargetDictionary!==void 0?this.morphTargetDictionary=Object.assign({},t.morphTargetDictionary):this.morphTargetDictionary=void 0,this.material=Array.isArray(t.material)?t.material.slice():t.material,this.geometry=t.geometry,this}computeLineDistances(){let t=this.geometry;if(t.index===null){let e=t.attributes.position,i=[0];for(let s=1,r=e.count;s<r;s++)zc.fromBufferAttribute(e,s-1),Vc.fromBufferAttribute(e,s),i[s]=i[s-1],i[s]+=zc.distanceTo(Vc);t.setAttribute("lineDistance",new jt(i,1))}else Nt("Line.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}intersectsFrustum(t){return t.intersectsObject(this)}raycast(t,e){let i=this.geometry,s=this.matrixWorld,r=t.params.Line.threshold,o=i.drawRange;if(i.boundingSphere===null&&i.computeBoundingSphere(),mc.copy(i.boundingSphere),mc.applyMatrix4(s),mc.radius+=r,t.ray.intersectsSphere(mc)===!1)return;Zg.copy(s).invert(),na.copy(t.ray).applyMatrix4(Zg);let a=r/((this.scale.x+this.scale.y+this.scale.z)/3),l=a*a,u=this.isLineSegments?2:1,h=i.index,p=i.attributes.position;if(h!==null){let f=Math.max(0,o.start),g=Math.min(h.count,o.start+o.count);for(let _=f,v=g-1;_<v;_+=u){let m=h.getX(_),y=h.getX(_+1),M=gc(this,t,na,l,m,y,_);M&&e.push(M)}if(this.isLineLoop){let _=h.getX(g-1),v=h.getX(f),m=gc(this,t,na,l,_,v,g-1);m&&e.push(m)}}else{let f=Math.max(0,o.start),g=Math.min(p.count,o.start+o.count);for(let _=f,v=g-1;_<v;_+=u){let m=gc(this,t,na,l,_,_+1,_);m&&e.push(m)}if(this.isLineLoop){let _=gc(this,t,na,l,g-1,f,g-1);_&&e.push(_)}}}updateMorphTargets(){let e=this.geometry.morphAttributes,i=Object.keys(e);if(i.length>0){let s=e[i[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,o=s.length;r<o;r++){let a=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[a]=r}}}}};function gc(n,t,e,i,s,r,o){let a=n.geometry.attributes.position;if(zc.fromBufferAttribute(a,s),Vc.fromBufferAttribute(a,r),e.distanceSqToSegment(zc,Vc,Yd,Jg)>i)return;Yd.applyMatrix4(n.matrixWorld);let u=t.ray.origin.distanceTo(Yd);if(!(u<t.near||u>t.far))return{distance:u,point:Jg.clone().applyMatrix4(n.matrixWorld),index:o,face:null,faceIndex:null,barycoord:null,object:n}}var Kg=new N,jg=new N,Qr=class extends ps{constructor(t,e){super(t,e),this.isLineSegments=!0,this.type="LineSegments"}computeLineDistances(){let t=this.geometry;if(t.index===null){let e=t.attributes.position,i=[];for(let s=0,r=e.count;s<r;s+=2)Kg.fromBufferAttribute(e,s),jg.fromBufferAttribute(e,s+1),i[s]=s===0?0:i[s-1],i[s+1]=i[s]+Kg.distanceTo(jg);t.setAttribute("lineDistance",new jt(i,1))}else Nt("LineSegments.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}};var Gc=class extends xi{constructor(t){super(),this.isPointsMaterial=!0,this.type="PointsMaterial",this.color=new Xt(16777215),this.map=null,this.alphaMap=null,this.size=1,this.sizeAttenuation=!0,this.fog=!0,this.setValues(t)}copy(t){return super.copy(t),this.color.copy(t.color),this.map=t.map,this.alphaMap=t.alphaMap,this.size=t.size,this.sizeAttenuation=t.sizeAttenuation,this.fog=t.fog,this}},Qg=new oe,sf=new ds,vc=new yi,_c=new N,xa=class extends en{constructor(t=new me,e=new Gc){super(),this.isPoints=!0,this.type="Points",this.geometry=t,this.material=e,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.updateMorphTargets()}copy(t,e){return super.copy(t,e),t.morphTargetInfluences!==void 0?this.morphTargetInfluences=t.morphTargetInfluences.slice():this.morphTargetInfluences=void 0,t.morphTargetDictionary!==void 0?this.morphTargetDictionary=Object.assign({},t.morphTargetDictionary):this.morphTargetDictionary=void 0,this.material=Array.isArray(t.material)?t.material.slice():t.material,this.geometry=t.geometry,this}intersectsFrustum(t){return t.intersectsObject(this)}raycast(t,e){let i=this.geometry,s=this.matrixWorld,r=t.params.Points.threshold,o=i.drawRange;if(i.boundingSphere===null&&i.computeBoundingSphere(),vc.copy(i.boundingSphere),vc.applyMatrix4(s),vc.radius+=r,t.ray.intersectsSphere(vc)===!1)return;Qg.copy(s).invert(),sf.copy(t.ray).applyMatrix4(Qg);let a=r/((this.scale.x+this.scale.y+this.scale.z)/3),l=a*a,u=i.index,d=i.attributes.position;if(u!==null){let p=Math.max(0,o.start),f=Math.min(u.count,o.start+o.count);for(let g=p,_=f;g<_;g++){let v=u.getX(g);_c.fromBufferAttribute(d,v),t0(_c,v,l,s,t,e,this)}}else{let p=Math.max(0,o.start),f=Math.min(d.count,o.start+o.count);for(let g=p,_=f;g<_;g++)_c.fromBufferAttribute(d,g),t0(_c,g,l,s,t,e,this)}}updateMorphTargets(){let e=this.geometry.morphAttributes,i=Object.keys(e);if(i.length>0){let s=e[i[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,o=s.length;r<o;r++){let a=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[a]=r}}}}};function t0(n,t,e,i,s,r,o){let a=sf.distanceSqToPoint(n);if(a<e){let l=new N;sf.closestPointToPoint(n,l),l.applyMatrix4(i);let u=s.ray.origin.distanceTo(l);if(u<s.near||u>s.far)return;r.push({distance:u,distanceToRay:Math.sqrt(a),point:l,index:t,face:null,faceIndex:null,barycoord:null,object:o})}}var ba=class extends En{constructor(t=[],e=js,i,s,r,o,a,l,u,h){super(t,e,i,s,r,o,a,l,u,h),this.isCubeTexture=!0,this.flipY=!1}get images(){return this.image}set images(t){this.image=t}};var Xi=class extends En{constructor(t,e,i=hi,s,r,o,a=tn,l=tn,u,h=Wi,d=1){if(h!==Wi&&h!==Zi)throw new Error("THREE.DepthTexture: format must be either THREE.DepthFormat or THREE.DepthStencilFormat");let p={width:t,height:e,depth:d};super(p,s,r,o,a,l,h,i,u),this.isDepthTexture=!0,this.flipY=!1,this.generateMipmaps=!1,this.compareFunction=null}copy(t){return super.copy(t),this.source=new Jr(Object.assign({},t.image)),this.compareFunction=t.compareFunction,this}toJSON(t){let e=super.toJSON(t);return e.compareFunction=this.compareFunction,e}},wa=class extends Xi{constructor(t,e=hi,i=js,s,r,o=tn,a=tn,l,u=Wi){let h={width:t,height:t,depth:1},d=[h,h,h,h,h,h];super(t,t,e,i,s,r,o,a,l,u),this.image=d,this.isCubeDepthTexture=!0,this.isCubeTexture=!0}get images(){return this.image}set images(t){this.image=t}},Ma=class extends En{constructor(t=null){super(),this.sourceTexture=t,this.isExternalTexture=!0}copy(t){return super.copy(t),this.sourceTexture=t.sourceTexture,this}},Cn=class n extends me{constructor(t=1,e=1,i=1,s=1,r=1,o=1){super(),this.type="BoxGeometry",this.parameters={width:t,height:e,depth:i,widthSegments:s,heightSegments:r,depthSegments:o};let a=this;s=Math.floor(s),r=Math.floor(r),o=Math.floor(o);let l=[],u=[],h=[],d=[],p=0,f=0;g("z","y","x",-1,-1,i,e,t,o,r,0),g("z","y","x",1,-1,i,e,-t,o,r,1),g("x","z","y",1,1,t,i,e,s,o,2),g("x","z","y",1,-1,t,i,-e,s,o,3),g("x","y","z",1,-1,t,e,i,s,r,4),g("x","y","z",-1,-1,t,e,-i,s,r,5),this.setIndex(l),this.setAttribute("position",new jt(u,3)),this.setAttribute("normal",new jt(h,3)),this.setAttribute("uv",new jt(d,2));function g(_,v,m,y,M,b,E,A,x,T,L){let R=b/x,P=E/T,O=b/2,B=E/2,I=A/2,W=x+1,$=T+1,F=0,Q=0,G=new N;for(let tt=0;tt<$;tt++){let et=tt*P-B;for(let St=0;St<W;St++){let Ot=St*R-O;G[_]=Ot*y,G[v]=et*M,G[m]=I,u.push(G.x,G.y,G.z),G[_]=0,G[v]=0,G[m]=A>0?1:-1,h.push(G.x,G.y,G.z),d.push(St/x),d.push(1-tt/T),F+=1}}for(let tt=0;tt<T;tt++)for(let et=0;et<x;et++){let St=p+et+W*tt,Ot=p+et+W*(tt+1),Z=p+(et+1)+W*(tt+1),gt=p+(et+1)+W*tt;l.push(St,Ot,gt),l.push(Ot,Z,gt),Q+=6}a.addGroup(f,Q,L),f+=Q,p+=F}}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new n(t.width,t.height,t.depth,t.widthSegments,t.heightSegments,t.depthSegments)}};var qs=class n extends me{constructor(t=1,e=32,i=0,s=Math.PI*2){super(),this.type="CircleGeometry",this.parameters={radius:t,segments:e,thetaStart:i,thetaLength:s},e=Math.max(3,e);let r=[],o=[],a=[],l=[],u=new N,h=new at;o.push(0,0,0),a.push(0,0,1),l.push(.5,.5);for(let d=0,p=3;d<=e;d++,p+=3){let f=i+d/e*s;u.x=t*Math.cos(f),u.y=t*Math.sin(f),o.push(u.x,u.y,u.z),a.push(0,0,1),h.x=(o[p]/t+1)/2,h.y=(o[p+1]/t+1)/2,l.push(h.x,h.y)}for(let d=1;d<=e;d++)r.push(d,d+1,0);this.setIndex(r),this.setAttribute("position",new jt(o,3)),this.setAttribute("normal",new jt(a,3)),this.setAttribute("uv",new jt(l,2))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new n(t.radius,t.segments,t.thetaStart,t.thetaLength)}},qi=class n extends me{constructor(t=1,e=1,i=1,s=32,r=1,o=!1,a=0,l=Math.PI*2){super(),this.type="CylinderGeometry",this.parameters={radiusTop:t,radiusBottom:e,height:i,radialSegments:s,heightSegments:r,openEnded:o,thetaStart:a,thetaLength:l};let u=this;s=Math.floor(s),r=Math.floor(r);let h=[],d=[],p=[],f=[],g=0,_=[],v=i/2,m=0;y(),o===!1&&(t>0&&M(!0),e>0&&M(!1)),this.setIndex(h),this.setAttribute("position",new jt(d,3)),this.setAttribute("normal",new jt(p,3)),this.setAttribute("uv",new jt(f,2));function y(){let b=new N,E=new N,A=0,x=(e-t)/i;for(let T=0;T<=r;T++){let L=[],R=T/r,P=R*(e-t)+t;for(let O=0;O<=s;O++){let B=O/s,I=B*l+a,W=Math.sin(I),$=Math.cos(I);E.x=P*W,E.y=-R*i+v,E.z=P*$,d.push(E.x,E.y,E.z),b.set(W,x,$).normalize(),p.push(b.x,b.y,b.z),f.push(B,1-R),L.push(g++)}_.push(L)}for(let T=0;T<s;T++)for(let L=0;L<r;L++){let R=_[L][T],P=_[L+1][T],O=_[L+1][T+1],B=_[L][T+1];(t>0||L!==0)&&(h.push(R,P,B),A+=3),(e>0||L!==r-1)&&(h.push(P,O,B),A+=3)}u.addGroup(m,A,0),m+=A}function M(b){let E=g,A=new at,x=new N,T=0,L=b===!0?t:e,R=b===!0?1:-1;for(let O=1;O<=s;O++)d.push(0,v*R,0),p.push(0,R,0),f.push(.5,.5),g++;let P=g;for(let O=0;O<=s;O++){let I=O/s*l+a,W=Math.cos(I),$=Math.sin(I);x.x=L*$,x.y=v*R,x.z=L*W,d.push(x.x,x.y,x.z),p.push(0,R,0),A.x=W*.5+.5,A.y=$*.5*R+.5,f.push(A.x,A.y),g++}for(let O=0;O<s;O++){let B=E+O,I=P+O;b===!0?h.push(I,I+1,B):h.push(I+1,I,B),T+=3}u.addGroup(m,T,b===!0?1:2),m+=T}}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new n(t.radiusTop,t.radiusBottom,t.height,t.radialSegments,t.heightSegments,t.openEnded,t.thetaStart,t.thetaLength)}};var zn=class{constructor(){this.type="Curve",this.arcLengthDivisions=200,this.needsUpdate=!1,this.cacheArcLengths=null}getPoint(){Nt("Curve: .getPoint() not implemented.")}getPointAt(t,e){let i=this.getUtoTmapping(t);return this.getPoint(i,e)}getPoints(t=5){let e=[];for(let i=0;i<=t;i++)e.push(this.getPoint(i/t));return e}getSpacedPoints(t=5){let e=[];for(let i=0;i<=t;i++)e.push(this.getPointAt(i/t));return e}getLength(){let t=this.getLengths();return t[t.length-1]}getLengths(t=this.arcLengthDivisions){if(this.cacheArcLengths&&this.cacheArcLengths.length===t+1&&!this.needsUpdate)return this.cacheArcLengths;this.needsUpdate=!1;let e=[],i,s=this.getPoint(0),r=0;e.push(0);for(let o=1;o<=t;o++)i=this.getPoint(o/t),r+=i.distanceTo(s),e.push(r),s=i;return this.cacheArcLengths=e,e}updateArcLengths(){this.needsUpdate=!0,this.getLengths()}getUtoTmapping(t,e=null){let i=this.getLengths(),s=0,r=i.length,o;e?o=e:o=t*i[r-1];let a=0,l=r-1,u;for(;a<=l;)if(s=Math.floor(a+(l-a)/2),u=i[s]-o,u<0)a=s+1;else if(u>0)l=s-1;else{l=s;break}if(s=l,i[s]===o)return s/(r-1);let h=i[s],p=i[s+1]-h,f=(o-h)/p;return(s+f)/(r-1)}getTangent(t,e){let s=t-1e-4,r=t+1e-4;s<0&&(s=0),r>1&&(r=1);let o=this.getPoint(s),a=this.getPoint(r),l=e||(o.isVector2?new at:new N);return l.copy(a).sub(o).normalize(),l}getTangentAt(t,e){let i=this.getUtoTmapping(t);return this.getTangent(i,e)}computeFrenetFrames(t,e=!1){let i=new N,s=[],r=[],o=[],a=new N,l=new oe;for(let f=0;f<=t;f++){let g=f/t;s[f]=this.getTangentAt(g,new N)}r[0]=new N,o[0]=new N;let u=Number.MAX_VALUE,h=Math.abs(s[0].x),d=Math.abs(s[0].y),p=Math.abs(s[0].z);h<=u&&(u=h,i.set(1,0,0)),d<=u&&(u=d,i.set(0,1,0)),p<=u&&i.set(0,0,1),a.crossVectors(s[0],i).normalize(),r[0].crossVectors(s[0],a),o[0].crossVectors(s[0],r[0]);for(let f=1;f<=t;f++){if(r[f]=r[f-1].clone(),o[f]=o[f-1].clone(),a.crossVectors(s[f-1],s[f]),a.length()>Number.EPSILON){a.normalize();let g=Math.acos(Yt(s[f-1].dot(s[f]),-1,1));r[f].applyMatrix4(l.makeRotationAxis(a,g))}o[f].crossVectors(s[f],r[f])}if(e===!0){let f=Math.acos(Yt(r[0].dot(r[t]),-1,1));f/=t,s[0].dot(a.crossVectors(r[0],r[t]))>0&&(f=-f);for(let g=1;g<=t;g++)r[g].applyMatrix4(l.makeRotationAxis(s[g],f*g)),o[g].crossVectors(s[g],r[g])}return{tangents:s,normals:r,binormals:o}}clone(){return new this.constructor().copy(this)}copy(t){return this.arcLengthDivisions=t.arcLengthDivisions,this.cacheArcLengths=null,this}toJSON(){let t={metadata:{version:4.7,type:"Curve",generator:"Curve.toJSON"}};return t.arcLengthDivisions=this.arcLengthDivisions,t.type=this.type,t}fromJSON(t){return this.arcLengthDivisions=t.arcLengthDivisions,this.cacheArcLengths=null,this}},to=class extends zn{constructor(t=0,e=0,i=1,s=1,r=0,o=Math.PI*2,a=!1,l=0){super(),this.isEllipseCurve=!0,this.type="EllipseCurve",this.aX=t,this.aY=e,this.xRadius=i,this.yRadius=s,this.aStartAngle=r,this.aEndAngle=o,this.aClockwise=a,this.aRotation=l}getPoint(t,e=new at){let i=e,s=Math.PI*2,r=this.aEndAngle-this.aStartAngle,o=Math.abs(r)<Number.EPSILON;for(;r<0;)r+=s;for(;r>s;)r-=s;r<Number.EPSILON&&(o?r=0:r=s),this.aClockwise===!0&&!o&&(r===s?r=-s:r=r-s);let a=this.aStartAngle+t*r,l=this.aX+this.xRadius*Math.cos(a),u=this.aY+this.yRadius*Math.sin(a);if(this.aRotation!==0){let h=Math.cos(this.aRotation),d=Math.sin(this.aRotation),p=l-this.aX,f=u-this.aY;l=p*h-f*d+this.aX,u=p*d+f*h+this.aY}return i.set(l,u)}copy(t){return super.copy(t),this.aX=t.aX,this.aY=t.aY,this.xRadius=t.xRadius,this.yRadius=t.yRadius,this.aStartAngle=t.aStartAngle,this.aEndAngle=t.aEndAngle,this.aClockwise=t.aClockwise,this.aRotation=t.aRotation,this}toJSON(){let t=super.toJSON();return t.aX=this.aX,t.aY=this.aY,t.xRadius=this.xRadius,t.yRadius=this.yRadius,t.aStartAngle=this.aStartAngle,t.aEndAngle=this.aEndAngle,t.aClockwise=this.aClockwise,t.aRotation=this.aRotation,t}fromJSON(t){return super.fromJSON(t),this.aX=t.aX,this.aY=t.aY,this.xRadius=t.xRadius,this.yRadius=t.yRadius,this.aStartAngle=t.aStartAngle,this.aEndAngle=t.aEndAngle,this.aClockwise=t.aClockwise,this.aRotation=t.aRotation,this}},Hc=class extends to{constructor(t,e,i,s,r,o){super(t,e,i,i,s,r,o),this.isArcCurve=!0,this.type="ArcCurve"}};function Ff(){let n=0,t=0,e=0,i=0;function s(r,o,a,l){n=r,t=a,e=-3*r+3*o-2*a-l,i=2*r-2*o+a+l}return{initCatmullRom:function(r,o,a,l,u){s(o,a,u*(a-r),u*(l-o))},initNonuniformCatmullRom:function(r,o,a,l,u,h,d){let p=(o-r)/u-(a-r)/(u+h)+(a-o)/h,f=(a-o)/h-(l-o)/(h+d)+(l-a)/d;p*=h,f*=h,s(o,a,p,f)},calc:function(r){let o=r*r,a=o*r;return n+t*r+e*o+i*a}}}var e0=new N,n0=new N,Zd=new Ff,Jd=new Ff,Kd=new Ff,Wc=class extends zn{constructor(t=[],e=!1,i="centripetal",s=.5){super(),this.isCatmullRomCurve3=!0,this.type="CatmullRomCurve3",this.points=t,this.closed=e,this.curveType=i,this.tension=s}getPoint(t,e=new N){let i=e,s=this.points,r=s.length,o=(r-(this.closed?0:1))*t,a=Math.floor(o),l=o-a;this.closed?a+=a>0?0:(Math.floor(Math.abs(a)/r)+1)*r:l===0&&a===r-1&&(a=r-2,l=1);let u,h;this.closed||a>0?u=s[(a-1)%r]:(n0.subVectors(s[0],s[1]).add(s[0]),u=n0);let d=s[a%r],p=s[(a+1)%r];if(this.closed||a+2<r?h=s[(a+2)%r]:(e0.subVectors(s[r-1],s[r-2]).add(s[r-1]),h=e0),this.curveType==="centripetal"||this.curveType==="chordal"){let f=this.curveType==="chordal"?.5:.25,g=Math.pow(u.distanceToSquared(d),f),_=Math.pow(d.distanceToSquared(p),f),v=Math.pow(p.distanceToSquared(h),f);_<1e-4&&(_=1),g<1e-4&&(g=_),v<1e-4&&(v=_),Zd.initNonuniformCatmullRom(u.x,d.x,p.x,h.x,g,_,v),Jd.initNonuniformCatmullRom(u.y,d.y,p.y,h.y,g,_,v),Kd.initNonuniformCatmullRom(u.z,d.z,p.z,h.z,g,_,v)}else this.curveType==="catmullrom"&&(Zd.initCatmullRom(u.x,d.x,p.x,h.x,this.tension),Jd.initCatmullRom(u.y,d.y,p.y,h.y,this.tension),Kd.initCatmullRom(u.z,d.z,p.z,h.z,this.tension));return i.set(Zd.calc(l),Jd.calc(l),Kd.calc(l)),i}copy(t){super.copy(t),this.points=[];for(let e=0,i=t.points.length;e<i;e++){let s=t.points[e];this.points.push(s.clone())}return this.closed=t.closed,this.curveType=t.curveType,this.tension=t.tension,this}toJSON(){let t=super.toJSON();t.points=[];for(let e=0,i=this.points.length;e<i;e++){let s=this.points[e];t.points.push(s.toArray())}return t.closed=this.closed,t.curveType=this.curveType,t.tension=this.tension,t}fromJSON(t){super.fromJSON(t),this.points=[];for(let e=0,i=t.points.length;e<i;e++){let s=t.points[e];this.points.push(new N().fromArray(s))}return this.closed=t.closed,this.curveType=t.curveType,this.tension=t.tension,this}};function i0(n,t,e,i,s){let r=(i-t)*.5,o=(s-e)*.5,a=n*n,l=n*a;return(2*e-2*i+r+o)*l+(-3*e+3*i-2*r-o)*a+r*n+e}function Bb(n,t){let e=1-n;return e*e*t}function zb(n,t){return 2*(1-n)*n*t}function Vb(n,t){return n*n*t}function aa(n,t,e,i){return Bb(n,t)+zb(n,e)+Vb(n,i)}function Gb(n,t){let e=1-n;return e*e*e*t}function Hb(n,t){let e=1-n;return 3*e*e*n*t}function Wb(n,t){return 3*(1-n)*n*n*t}function $b(n,t){return n*n*n*t}function la(n,t,e,i,s){return Gb(n,t)+Hb(n,e)+Wb(n,i)+$b(n,s)}var Sa=class extends zn{constructor(t=new at,e=new at,i=new at,s=new at){super(),this.isCubicBezierCurve=!0,this.type="CubicBezierCurve",this.v0=t,this.v1=e,this.v2=i,this.v3=s}getPoint(t,e=new at){let i=e,s=this.v0,r=this.v1,o=this.v2,a=this.v3;return i.set(la(t,s.x,r.x,o.x,a.x),la(t,s.y,r.y,o.y,a.y)),i}copy(t){return super.copy(t),this.v0.copy(t.v0),this.v1.copy(t.v1),this.v2.copy(t.v2),this.v3.copy(t.v3),this}toJSON(){let t=super.toJSON();return t.v0=this.v0.toArray(),t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t.v3=this.v3.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v0.fromArray(t.v0),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this.v3.fromArray(t.v3),this}},$c=class extends zn{constructor(t=new N,e=new N,i=new N,s=new N){super(),this.isCubicBezierCurve3=!0,this.type="CubicBezierCurve3",this.v0=t,this.v1=e,this.v2=i,this.v3=s}getPoint(t,e=new N){let i=e,s=this.v0,r=this.v1,o=this.v2,a=this.v3;return i.set(la(t,s.x,r.x,o.x,a.x),la(t,s.y,r.y,o.y,a.y),la(t,s.z,r.z,o.z,a.z)),i}copy(t){return super.copy(t),this.v0.copy(t.v0),this.v1.copy(t.v1),this.v2.copy(t.v2),this.v3.copy(t.v3),this}toJSON(){let t=super.toJSON();return t.v0=this.v0.toArray(),t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t.v3=this.v3.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v0.fromArray(t.v0),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this.v3.fromArray(t.v3),this}},Ta=class extends zn{constructor(t=new at,e=new at){super(),this.isLineCurve=!0,this.type="LineCurve",this.v1=t,this.v2=e}getPoint(t,e=new at){let i=e;return t===1?i.copy(this.v2):(i.copy(this.v2).sub(this.v1),i.multiplyScalar(t).add(this.v1)),i}getPointAt(t,e){return this.getPoint(t,e)}getTangent(t,e=new at){return e.subVectors(this.v2,this.v1).normalize()}getTangentAt(t,e){return this.getTangent(t,e)}copy(t){return super.copy(t),this.v1.copy(t.v1),this.v2.copy(t.v2),this}toJSON(){let t=super.toJSON();return t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this}},Xc=class extends zn{constructor(t=new N,e=new N){super(),this.isLineCurve3=!0,this.type="LineCurve3",this.v1=t,this.v2=e}getPoint(t,e=new N){let i=e;return t===1?i.copy(this.v2):(i.copy(this.v2).sub(this.v1),i.multiplyScalar(t).add(this.v1)),i}getPointAt(t,e){return this.getPoint(t,e)}getTangent(t,e=new N){return e.subVectors(this.v2,this.v1).normalize()}getTangentAt(t,e){return this.getTangent(t,e)}copy(t){return super.copy(t),this.v1.copy(t.v1),this.v2.copy(t.v2),this}toJSON(){let t=super.toJSON();return t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this}},Aa=class extends zn{constructor(t=new at,e=new at,i=new at){super(),this.isQuadraticBezierCurve=!0,this.type="QuadraticBezierCurve",this.v0=t,this.v1=e,this.v2=i}getPoint(t,e=new at){let i=e,s=this.v0,r=this.v1,o=this.v2;return i.set(aa(t,s.x,r.x,o.x),aa(t,s.y,r.y,o.y)),i}copy(t){return super.copy(t),this.v0.copy(t.v0),this.v1.copy(t.v1),this.v2.copy(t.v2),this}toJSON(){let t=super.toJSON();return t.v0=this.v0.toArray(),t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v0.fromArray(t.v0),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this}},qc=class extends zn{constructor(t=new N,e=new N,i=new N){super(),this.isQuadraticBezierCurve3=!0,this.type="QuadraticBezierCurve3",this.v0=t,this.v1=e,this.v2=i}getPoint(t,e=new N){let i=e,s=this.v0,r=this.v1,o=this.v2;return i.set(aa(t,s.x,r.x,o.x),aa(t,s.y,r.y,o.y),aa(t,s.z,r.z,o.z)),i}copy(t){return super.copy(t),this.v0.copy(t.v0),this.v1.copy(t.v1),this.v2.copy(t.v2),this}toJSON(){let t=super.toJSON();return t.v0=this.v0.toArray(),t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v0.fromArray(t.v0),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this}},Ea=class extends zn{constructor(t=[]){super(),this.isSplineCurve=!0,this.type="SplineCurve",this.points=t}getPoint(t,e=new at){let i=e,s=this.points,r=(s.length-1)*t,o=Math.floor(r),a=r-o,l=s[o===0?o:o-1],u=s[o],h=s[o>s.length-2?s.length-1:o+1],d=s[o>s.length-3?s.length-1:o+2];return i.set(i0(a,l.x,u.x,h.x,d.x),i0(a,l.y,u.y,h.y,d.y)),i}copy(t){super.copy(t),this.points=[];for(let e=0,i=t.points.length;e<i;e++){let s=t.points[e];this.points.push(s.clone())}return this}toJSON(){let t=super.toJSON();t.points=[];for(let e=0,i=this.points.length;e<i;e++){let s=this.points[e];t.points.push(s.toArray())}return t}fromJSON(t){super.fromJSON(t),this.points=[];for(let e=0,i=t.points.length;e<i;e++){let s=t.points[e];this.points.push(new at().fromArray(s))}return this}},s0=Object.freeze({__proto__:null,ArcCurve:Hc,CatmullRomCurve3:Wc,CubicBezierCurve:Sa,CubicBezierCurve3:$c,EllipseCurve:to,LineCurve:Ta,LineCurve3:Xc,QuadraticBezierCurve:Aa,QuadraticBezierCurve3:qc,SplineCurve:Ea}),Yc=class extends zn{constructor(){super(),this.type="CurvePath",this.curves=[],this.autoClose=!1,this.cacheLengths=null}add(t){this.curves.push(t)}closePath(){let t=this.curves[0].getPoint(0),e=this.curves[this.curves.length-1].getPoint(1);if(!t.equals(e)){let i=t.isVector2===!0?"LineCurve":"LineCurve3";this.curves.push(new s0[i](e,t))}return this}getPoint(t,e){let i=t*this.getLength(),s=this.getCurveLengths(),r=0;for(;r<s.length;){if(s[r]>=i){let o=s[r]-i,a=this.curves[r],l=a.getLength(),u=l===0?0:1-o/l;return a.getPointAt(u,e)}r++}return null}getLength(){let t=this.getCurveLengths();return t[t.length-1]}updateArcLengths(){this.needsUpdate=!0,this.cacheLengths=null,this.getCurveLengths()}getCurveLengths(){if(this.cacheLengths&&this.cacheLengths.length===this.curves.length)return this.cacheLengths;let t=[],e=0;for(let i=0,s=this.curves.length;i<s;i++)e+=this.curves[i].getLength(),t.push(e);return this.cacheLengths=t,t}getSpacedPoints(t=40){let e=[];for(let i=0;i<=t;i++)e.push(this.getPoint(i/t));return this.autoClose&&e.push(e[0]),e}getPoints(t=12){let e=[],i;for(let s=0,r=this.curves;s<r.length;s++){let o=r[s],a=o.isEllipseCurve?t*2:o.isLineCurve||o.isLineCurve3?1:o.isSplineCurve?t*o.points.length:t,l=o.getPoints(a);for(let u=0;u<l.length;u++){let h=l[u];i&&i.equals(h)||(e.push(h),i=h)}}return this.autoClose&&e.length>1&&!e[e.length-1].equals(e[0])&&e.push(e[0]),e}copy(t){super.copy(t),this.curves=[];for(let e=0,i=t.curves.length;e<i;e++){let s=t.curves[e];this.curves.push(s.clone())}return this.autoClose=t.autoClose,this.cacheLengths=null,this}toJSON(){let t=super.toJSON();t.autoClose=this.autoClose,t.curves=[];for(let e=0,i=this.curves.length;e<i;e++){let s=this.curves[e];t.curves.push(s.toJSON())}return t}fromJSON(t){super.fromJSON(t),this.autoClose=t.autoClose,this.curves=[];for(let e=0,i=t.curves.length;e<i;e++){let s=t.curves[e];this.curves.push(new s0[s.type]().fromJSON(s))}return this.cacheLengths=null,this}},Ca=class extends Yc{constructor(t){super(),this.type="Path",this.currentPoint=new at,t&&this.setFromPoints(t)}setFromPoints(t){this.moveTo(t[0].x,t[0].y);for(let e=1,i=t.length;e<i;e++)this.lineTo(t[e].x,t[e].y);return this}moveTo(t,e){return this.currentPoint.set(t,e),this}lineTo(t,e){let i=new Ta(this.currentPoint.clone(),new at(t,e));return this.curves.push(i),this.currentPoint.set(t,e),this}quadraticCurveTo(t,e,i,s){let r=new Aa(this.currentPoint.clone(),new at(t,e),new at(i,s));return this.curves.push(r),this.currentPoint.set(i,s),this}bezierCurveTo(t,e,i,s,r,o){let a=new Sa(this.currentPoint.clone(),new at(t,e),new at(i,s),new at(r,o));return this.curves.push(a),this.currentPoint.set(r,o),this}splineThru(t){let e=[this.currentPoint.clone()].concat(t),i=new Ea(e);return this.curves.push(i),this.currentPoint.copy(t[t.length-1]),this}arc(t,e,i,s,r,o){let a=this.currentPoint.x,l=this.currentPoint.y;return this.absarc(t+a,e+l,i,s,r,o),this}absarc(t,e,i,s,r,o){return this.absellipse(t,e,i,i,s,r,o),this}ellipse(t,e,i,s,r,o,a,l){let u=this.currentPoint.x,h=this.currentPoint.y;return this.absellipse(t+u,e+h,i,s,r,o,a,l),this}absellipse(t,e,i,s,r,o,a,l){let u=new to(t,e,i,s,r,o,a,l);if(this.curves.length>0){let d=u.getPoint(0);d.equals(this.currentPoint)||this.lineTo(d.x,d.y)}this.curves.push(u);let h=u.getPoint(1);return this.currentPoint.copy(h),this}copy(t){return super.copy(t),this.currentPoint.copy(t.currentPoint),this}toJSON(){let t=super.toJSON();return t.currentPoint=this.currentPoint.toArray(),t}fromJSON(t){return super.fromJSON(t),this.currentPoint.fromArray(t.currentPoint),this}},ms=class extends Ca{constructor(t){super(t),this.uuid=tr(),this.type="Shape",this.holes=[]}getPointsHoles(t){let e=[];for(let i=0,s=this.holes.length;i<s;i++)e[i]=this.holes[i].getPoints(t);return e}extractPoints(t){return{shape:this.getPoints(t),holes:this.getPointsHoles(t)}}copy(t){super.copy(t),this.holes=[];for(let e=0,i=t.holes.length;e<i;e++){let s=t.holes[e];this.holes.push(s.clone())}return this}toJSON(){let t=super.toJSON();t.uuid=this.uuid,t.holes=[];for(let e=0,i=this.holes.length;e<i;e++){let s=this.holes[e];t.holes.push(s.toJSON())}return t}fromJSON(t){super.fromJSON(t),this.uuid=t.uuid,this.holes=[];for(let e=0,i=t.holes.length;e<i;e++){let s=t.holes[e];this.holes.push(new Ca().fromJSON(s))}return this}};function Xb(n,t,e=2){let i=t&&t.length,s=i?t[0]*e:n.length,r=ev(n,0,s,e,!0),o=[];if(!r||r.next===r.prev)return o;let a,l,u;if(i&&(r=Kb(n,t,r,e)),n.length>80*e){a=n[0],l=n[1];let h=a,d=l;for(let p=e;p<s;p+=e){let f=n[p],g=n[p+1];f<a&&(a=f),g<l&&(l=g),f>h&&(h=f),g>d&&(d=g)}u=Math.max(h-a,d-l),u=u!==0?32767/u:0}return Ra(r,o,e,a,l,u,0),o}function ev(n,t,e,i,s){let r;if(s===lw(n,t,e,i)>0)for(let o=t;o<e;o+=i)r=r0(o/i|0,n[o],n[o+1],r);else for(let o=e-i;o>=t;o-=i)r=r0(o/i|0,n[o],n[o+1],r);return r&&eo(r,r.next)&&(Ia(r),r=r.next),r}function Ys(n,t){if(!n)return n;t||(t=n);let e=n,i;do if(i=!1,!e.steiner&&(eo(e,e.next)||De(e.prev,e,e.next)===0)){if(Ia(e),e=t=e.prev,e===e.next)break;i=!0}else e=e.next;while(i||e!==t);return t}function Ra(n,t,e,i,s,r,o){if(!n)return;!o&&r&&nw(n,i,s,r);let a=n;for(;n.prev!==n.next;){let l=n.prev,u=n.next;if(r?Yb(n,i,s,r):qb(n)){t.push(l.i,n.i,u.i),Ia(n),n=u.next,a=u.next;continue}if(n=u,n===a){o?o===1?(n=Zb(Ys(n),t),Ra(n,t,e,i,s,r,2)):o===2&&Jb(n,t,e,i,s,r):Ra(Ys(n),t,e,i,s,r,1);break}}}function qb(n){let t=n.prev,e=n,i=n.next;if(De(t,e,i)>=0)return!1;let s=t.x,r=e.x,o=i.x,a=t.y,l=e.y,u=i.y,h=Math.min(s,r,o),d=Math.min(a,l,u),p=Math.max(s,r,o),f=Math.max(a,l,u),g=i.next;for(;g!==t;){if(g.x>=h&&g.x<=p&&g.y>=d&&g.y<=f&&ia(s,a,r,l,o,u,g.x,g.y)&&De(g.prev,g,g.next)>=0)return!1;g=g.next}return!0}function Yb(n,t,e,i){let s=n.prev,r=n,o=n.next;if(De(s,r,o)>=0)return!1;let a=s.x,l=r.x,u=o.x,h=s.y,d=r.y,p=o.y,f=Math.min(a,l,u),g=Math.min(h,d,p),_=Math.max(a,l,u),v=Math.max(h,d,p),m=rf(f,g,t,e,i),y=rf(_,v,t,e,i),M=n.prevZ,b=n.nextZ;for(;M&&M.z>=m&&b&&b.z<=y;){if(M.x>=f&&M.x<=_&&M.y>=g&&M.y<=v&&M!==s&&M!==o&&ia(a,h,l,d,u,p,M.x,M.y)&&De(M.prev,M,M.next)>=0||(M=M.prevZ,b.x>=f&&b.x<=_&&b.y>=g&&b.y<=v&&b!==s&&b!==o&&ia(a,h,l,d,u,p,b.x,b.y)&&De(b.prev,b,b.next)>=0))return!1;b=b.nextZ}for(;M&&M.z>=m;){if(M.x>=f&&M.x<=_&&M.y>=g&&M.y<=v&&M!==s&&M!==o&&ia(a,h,l,d,u,p,M.x,M.y)&&De(M.prev,M,M.next)>=0)return!1;M=M.prevZ}for(;b&&b.z<=y;){if(b.x>=f&&b.x<=_&&b.y>=g&&b.y<=v&&b!==s&&b!==o&&ia(a,h,l,d,u,p,b.x,b.y)&&De(b.prev,b,b.next)>=0)return!1;b=b.nextZ}return!0}function Zb(n,t){let e=n;do{let i=e.prev,s=e.next.next;!eo(i,s)&&iv(i,e,e.next,s)&&Pa(i,s)&&Pa(s,i)&&(t.push(i.i,e.i,s.i),Ia(e),Ia(e.next),e=n=s),e=e.next}while(e!==n);return Ys(e)}function Jb(n,t,e,i,s,r){let o=n;do{let a=o.next.next;for(;a!==o.prev;){if(o.i!==a.i&&rw(o,a)){let l=sv(o,a);o=Ys(o,o.next),l=Ys(l,l.next),Ra(o,t,e,i,s,r,0),Ra(l,t,e,i,s,r,0);return}a=a.next}o=o.next}while(o!==n)}function Kb(n,t,e,i){let s=[];for(let r=0,o=t.length;r<o;r++){let a=t[r]*i,l=r<o-1?t[r+1]*i:n.length,u=ev(n,a,l,i,!1);u===u.next&&(u.steiner=!0),s.push(sw(u))}s.sort(jb);for(let r=0;r<s.length;r++)e=Qb(s[r],e);return e}function jb(n,t){let e=n.x-t.x;if(e===0&&(e=n.y-t.y,e===0)){let i=(n.next.y-n.y)/(n.next.x-n.x),s=(t.next.y-t.y)/(t.next.x-t.x);e=i-s}return e}function Qb(n,t){let e=tw(n,t);if(!e)return t;let i=sv(e,n);return Ys(i,i.next),Ys(e,e.next)}function tw(n,t){let e=t,i=n.x,s=n.y,r=-1/0,o;if(eo(n,e))return e;do{if(eo(n,e.next))return e.next;if(s<=e.y&&s>=e.next.y&&e.next.y!==e.y){let d=e.x+(s-e.y)*(e.next.x-e.x)/(e.next.y-e.y);if(d<=i&&d>r&&(r=d,o=e.x<e.next.x?e:e.next,d===i))return o}e=e.next}while(e!==t);if(!o)return null;let a=o,l=o.x,u=o.y,h=1/0;e=o;do{if(i>=e.x&&e.x>=l&&i!==e.x&&nv(s<u?i:r,s,l,u,s<u?r:i,s,e.x,e.y)){let d=Math.abs(s-e.y)/(i-e.x);Pa(e,n)&&(d<h||d===h&&(e.x>o.x||e.x===o.x&&ew(o,e)))&&(o=e,h=d)}e=e.next}while(e!==a);return o}function ew(n,t){return De(n.prev,n,t.prev)<0&&De(t.next,n,n.next)<0}function nw(n,t,e,i){let s=n;do s.z===0&&(s.z=rf(s.x,s.y,t,e,i)),s.prevZ=s.prev,s.nextZ=s.next,s=s.next;while(s!==n);s.prevZ.nextZ=null,s.prevZ=null,iw(s)}function iw(n){let t,e=1;do{let i=n,s;n=null;let r=null;for(t=0;i;){t++;let o=i,a=0;for(let u=0;u<e&&(a++,o=o.nextZ,!!o);u++);let l=e;for(;a>0||l>0&&o;)a!==0&&(l===0||!o||i.z<=o.z)?(s=i,i=i.nextZ,a--):(s=o,o=o.nextZ,l--),r?r.nextZ=s:n=s,s.prevZ=r,r=s;i=o}r.nextZ=null,e*=2}while(t>1);return n}function rf(n,t,e,i,s){return n=(n-e)*s|0,t=(t-i)*s|0,n=(n|n<<8)&16711935,n=(n|n<<4)&252645135,n=(n|n<<2)&858993459,n=(n|n<<1)&1431655765,t=(t|t<<8)&16711935,t=(t|t<<4)&252645135,t=(t|t<<2)&858993459,t=(t|t<<1)&1431655765,n|t<<1}function sw(n){let t=n,e=n;do(t.x<e.x||t.x===e.x&&t.y<e.y)&&(e=t),t=t.next;while(t!==n);return e}function nv(n,t,e,i,s,r,o,a){return(s-o)*(t-a)>=(n-o)*(r-a)&&(n-o)*(i-a)>=(e-o)*(t-a)&&(e-o)*(r-a)>=(s-o)*(i-a)}function ia(n,t,e,i,s,r,o,a){return!(n===o&&t===a)&&nv(n,t,e,i,s,r,o,a)}function rw(n,t){return n.next.i!==t.i&&n.prev.i!==t.i&&!ow(n,t)&&(Pa(n,t)&&Pa(t,n)&&aw(n,t)&&(De(n.prev,n,t.prev)||De(n,t.prev,t))||eo(n,t)&&De(n.prev,n,n.next)>0&&De(t.prev,t,t.next)>0)}function De(n,t,e){return(t.y-n.y)*(e.x-t.x)-(t.x-n.x)*(e.y-t.y)}function eo(n,t){return n.x===t.x&&n.y===t.y}function iv(n,t,e,i){let s=xc(De(n,t,e)),r=xc(De(n,t,i)),o=xc(De(e,i,n)),a=xc(De(e,i,t));return!!(s!==r&&o!==a||s===0&&yc(n,e,t)||r===0&&yc(n,i,t)||o===0&&yc(e,n,i)||a===0&&yc(e,t,i))}function yc(n,t,e){return t.x<=Math.max(n.x,e.x)&&t.x>=Math.min(n.x,e.x)&&t.y<=Math.max(n.y,e.y)&&t.y>=Math.min(n.y,e.y)}function xc(n){return n>0?1:n<0?-1:0}function ow(n,t){let e=n;do{if(e.i!==n.i&&e.next.i!==n.i&&e.i!==t.i&&e.next.i!==t.i&&iv(e,e.next,n,t))return!0;e=e.next}while(e!==n);return!1}function Pa(n,t){return De(n.prev,n,n.next)<0?De(n,t,n.next)>=0&&De(n,n.prev,t)>=0:De(n,t,n.prev)<0||De(n,n.next,t)<0}function aw(n,t){let e=n,i=!1,s=(n.x+t.x)/2,r=(n.y+t.y)/2;do e.y>r!=e.next.y>r&&e.next.y!==e.y&&s<(e.next.x-e.x)*(r-e.y)/(e.next.y-e.y)+e.x&&(i=!i),e=e.next;while(e!==n);return i}function sv(n,t){let e=of(n.i,n.x,n.y),i=of(t.i,t.x,t.y),s=n.next,r=t.prev;return n.next=t,t.prev=n,e.next=s,s.prev=e,i.next=e,e.prev=i,r.next=i,i.prev=r,i}function r0(n,t,e,i){let s=of(n,t,e);return i?(s.next=i.next,s.prev=i,i.next.prev=s,i.next=s):(s.prev=s,s.next=s),s}function Ia(n){n.next.prev=n.prev,n.prev.next=n.next,n.prevZ&&(n.prevZ.nextZ=n.nextZ),n.nextZ&&(n.nextZ.prevZ=n.prevZ)}function of(n,t,e){return{i:n,x:t,y:e,prev:null,next:null,z:0,prevZ:null,nextZ:null,steiner:!1}}function lw(n,t,e,i){let s=0;for(let r=t,o=e-i;r<e;r+=i)s+=(n[o]-n[r])*(n[r+1]+n[o+1]),o=r;return s}var af=class{static triangulate(t,e,i=2){return Xb(t,e,i)}},$r=class n{static area(t){let e=t.length,i=0;for(let s=e-1,r=0;r<e;s=r++)i+=t[s].x*t[r].y-t[r].x*t[s].y;return i*.5}static isClockWise(t){return n.area(t)<0}static triangulateShape(t,e){let i=[],s=[],r=[];o0(t),a0(i,t);let o=t.length;e.forEach(o0);for(let l=0;l<e.length;l++)s.push(o),o+=e[l].length,a0(i,e[l]);let a=af.triangulate(i,s);for(let l=0;l<a.length;l+=3)r.push(a.slice(l,l+3));return r}};function o0(n){let t=n.length;t>2&&n[t-1].equals(n[0])&&n.pop()}function a0(n,t){for(let e=0;e<t.length;e++)n.push(t[e].x),n.push(t[e].y)}var Da=class n extends me{constructor(t=[new at(0,-.5),new at(.5,0),new at(0,.5)],e=12,i=0,s=Math.PI*2){super(),this.type="LatheGeometry",this.parameters={points:t,segments:e,phiStart:i,phiLength:s},e=Math.floor(e),s=Yt(s,0,Math.PI*2);let r=[],o=[],a=[],l=[],u=[],h=1/e,d=new N,p=new at,f=new N,g=new N,_=new N,v=0,m=0;for(let y=0;y<=t.length-1;y++)switch(y){case 0:v=t[y+1].x-t[y].x,m=t[y+1].y-t[y].y,f.x=m*1,f.y=-v,f.z=m*0,_.copy(f),f.normalize(),l.push(f.x,f.y,f.z);break;case t.length-1:_.normalize(),l.push(_.x,_.y,_.z);break;default:v=t[y+1].x-t[y].x,m=t[y+1].y-t[y].y,f.x=m*1,f.y=-v,f.z=m*0,g.copy(f),f.x+=_.x,f.y+=_.y,f.z+=_.z,f.normalize(),l.push(f.x,f.y,f.z),_.copy(g)}for(let y=0;y<=e;y++){let M=i+y*h*s,b=Math.sin(M),E=Math.cos(M);for(let A=0;A<=t.length-1;A++){d.x=t[A].x*b,d.y=t[A].y,d.z=t[A].x*E,o.push(d.x,d.y,d.z),p.x=y/e,p.y=A/(t.length-1),a.push(p.x,p.y);let x=l[3*A+0]*b,T=l[3*A+1],L=l[3*A+0]*E;u.push(x,T,L)}}for(let y=0;y<e;y++)for(let M=0;M<t.length-1;M++){let b=M+y*t.length,E=b,A=b+t.length,x=b+t.length+1,T=b+1;r.push(E,A,T),r.push(x,T,A)}this.setIndex(r),this.setAttribute("position",new jt(o,3)),this.setAttribute("uv",new jt(a,2)),this.setAttribute("normal",new jt(u,3))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new n(t.points,t.segments,t.phiStart,t.phiLength)}};var La=class n extends me{constructor(t=1,e=1,i=1,s=1){super(),this.type="PlaneGeometry",this.parameters={width:t,height:e,widthSegments:i,heightSegments:s};let r=t/2,o=e/2,a=Math.floor(i),l=Math.floor(s),u=a+1,h=l+1,d=t/a,p=e/l,f=[],g=[],_=[],v=[];for(let m=0;m<h;m++){let y=m*p-o;for(let M=0;M<u;M++){let b=M*d-r;g.push(b,-y,0),_.push(0,0,1),v.push(M/a),v.push(1-m/l)}}for(let m=0;m<l;m++)for(let y=0;y<a;y++){let M=y+u*m,b=y+u*(m+1),E=y+1+u*(m+1),A=y+1+u*m;f.push(M,b,A),f.push(b,E,A)}this.setIndex(f),this.setAttribute("position",new jt(g,3)),this.setAttribute("normal",new jt(_,3)),this.setAttribute("uv",new jt(v,2))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new n(t.width,t.height,t.widthSegments,t.heightSegments)}};var no=class n extends me{constructor(t=new ms([new at(0,.5),new at(-.5,-.5),new at(.5,-.5)]),e=12){super(),this.type="ShapeGeometry",this.parameters={shapes:t,curveSegments:e};let i=[],s=[],r=[],o=[],a=0,l=0;if(Array.isArray(t)===!1)u(t);else for(let h=0;h<t.length;h++)u(t[h]),this.addGroup(a,l,h),a+=l,l=0;this.setIndex(i),this.setAttribute("position",new jt(s,3)),this.setAttribute("normal",new jt(r,3)),this.setAttribute("uv",new jt(o,2));function u(h){let d=s.length/3,p=h.extractPoints(e),f=p.shape,g=p.holes;$r.isClockWise(f)===!1&&(f=f.reverse());for(let v=0,m=g.length;v<m;v++){let y=g[v];$r.isClockWise(y)===!0&&(g[v]=y.reverse())}let _=$r.triangulateShape(f,g);for(let v=0,m=g.length;v<m;v++){let y=g[v];f=f.concat(y)}for(let v=0,m=f.length;v<m;v++){let y=f[v];s.push(y.x,y.y,0),r.push(0,0,1),o.push(y.x,y.y)}for(let v=0,m=_.length;v<m;v++){let y=_[v],M=y[0]+d,b=y[1]+d,E=y[2]+d;i.push(M,b,E),l+=3}}}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}toJSON(){let t=super.toJSON(),e=this.parameters.shapes;return cw(e,t)}static fromJSON(t,e){let i=[];for(let s=0,r=t.shapes.length;s<r;s++){let o=e[t.shapes[s]];i.push(o)}return new n(i,t.curveSegments)}};function cw(n,t){if(t.shapes=[],Array.isArray(n))for(let e=0,i=n.length;e<i;e++){let s=n[e];t.shapes.push(s.uuid)}else t.shapes.push(n.uuid);return t}var gs=class n extends me{constructor(t=1,e=32,i=16,s=0,r=Math.PI*2,o=0,a=Math.PI){super(),this.type="SphereGeometry",this.parameters={radius:t,widthSegments:e,heightSegments:i,phiStart:s,phiLength:r,thetaStart:o,thetaLength:a},e=Math.max(3,Math.floor(e)),i=Math.max(2,Math.floor(i));let l=Math.min(o+a,Math.PI),u=0,h=[],d=new N,p=new N,f=[],g=[],_=[],v=[];for(let m=0;m<=i;m++){let y=[],M=m/i,b=o+M*a,E=t*Math.cos(b),A=Math.sqrt(t*t-E*E),x=0;m===0&&o===0?x=.5/e:m===i&&l===Math.PI&&(x=-.5/e);for(let T=0;T<=e;T++){let L=T/e,R=s+L*r;d.x=-A*Math.cos(R),d.y=E,d.z=A*Math.sin(R),g.push(d.x,d.y,d.z),p.copy(d).normalize(),_.push(p.x,p.y,p.z),v.push(L+x,1-M),y.push(u++)}h.push(y)}for(let m=0;m<i;m++)for(let y=0;y<e;y++){let M=h[m][y+1],b=h[m][y],E=h[m+1][y],A=h[m+1][y+1];(m!==0||o>0)&&f.push(M,b,A),(m!==i-1||l<Math.PI)&&f.push(b,E,A)}this.setIndex(f),this.setAttribute("position",new jt(g,3)),this.setAttribute("normal",new jt(_,3)),this.setAttribute("uv",new jt(v,2))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new n(t.radius,t.widthSegments,t.heightSegments,t.phiStart,t.phiLength,t.thetaStart,t.thetaLength)}};var Na=class n extends me{constructor(t=1,e=.4,i=12,s=48,r=Math.PI*2,o=0,a=Math.PI*2){super(),this.type="TorusGeometry",this.parameters={radius:t,tube:e,radialSegments:i,tubularSegments:s,arc:r,thetaStart:o,thetaLength:a},i=Math.floor(i),s=Math.floor(s);let l=[],u=[],h=[],d=[],p=new N,f=new N,g=new N;for(let _=0;_<=i;_++){let v=o+_/i*a;for(let m=0;m<=s;m++){let y=m/s*r;f.x=(t+e*Math.cos(v))*Math.cos(y),f.y=(t+e*Math.cos(v))*Math.sin(y),f.z=e*Math.sin(v),u.push(f.x,f.y,f.z),p.x=t*Math.cos(y),p.y=t*Math.sin(y),g.subVectors(f,p).normalize(),h.push(g.x,g.y,g.z),d.push(m/s),d.push(_/i)}}for(let _=1;_<=i;_++)for(let v=1;v<=s;v++){let m=(s+1)*_+v-1,y=(s+1)*(_-1)+v-1,M=(s+1)*(_-1)+v,b=(s+1)*_+v;l.push(m,y,b),l.push(y,M,b)}this.setIndex(l),this.setAttribute("position",new jt(u,3)),this.setAttribute("normal",new jt(h,3)),this.setAttribute("uv",new jt(d,2))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new n(t.radius,t.tube,t.radialSegments,t.tubularSegments,t.arc,t.thetaStart,t.thetaLength)}};function er(n){let t={};for(let e in n){t[e]={};for(let i in n[e]){let s=n[e][i];if(l0(s))s.isRenderTargetTexture?(Nt("UniformsUtils: Textures of render targets cannot be cloned via cloneUniforms() or mergeUniforms()."),t[e][i]=null):t[e][i]=s.clone();else if(Array.isArray(s))if(l0(s[0])){let r=[];for(let o=0,a=s.length;o<a;o++)r[o]=s[o].clone();t[e][i]=r}else t[e][i]=s.slice();else t[e][i]=s}}return t}function mn(n){let t={};for(let e=0;e<n.length;e++){let i=er(n[e]);for(let s in i)t[s]=i[s]}return t}function l0(n){return n&&(n.isColor||n.isMatrix3||n.isMatrix4||n.isVector2||n.isVector3||n.isVector4||n.isTexture||n.isQuaternion)}function uw(n){let t=[];for(let e=0;e<n.length;e++)t.push(n[e].clone());return t}function Bf(n){let t=n.getRenderTarget();return t===null?n.outputColorSpace:t.isXRRenderTarget===!0?t.texture.colorSpace:ne.workingColorSpace}var rv={clone:er,merge:mn},hw=`void main() {
	gl_Position = projectionMatrix * modelViewMatrix * vec4( position, 1.0 );
}`,dw=`void main() {
	gl_FragColor = vec4( 1.0, 0.0, 0.0, 1.0 );
}`,Vn=class extends xi{constructor(t){super(),this.isShaderMaterial=!0,this.type="ShaderMaterial",this.defines={},this.uniforms={},this.uniformsGroups=[],this.vertexShader=hw,this.fragmentShader=dw,this.linewidth=1,this.wireframe=!1,this.wireframeLinewidth=1,this.fog=!1,this.lights=!1,this.clipping=!1,this.forceSinglePass=!0,this.extensions={clipCullDistance:!1,multiDraw:!1},this.defaultAttributeValues={color:[1,1,1],uv:[0,0],uv1:[0,0]},this.index0AttributeName=void 0,this.uniformsNeedUpdate=!1,this.glslVersion=null,t!==void 0&&this.setValues(t)}copy(t){return super.copy(t),this.fragmentShader=t.fragmentShader,this.vertexShader=t.vertexShader,this.uniforms=er(t.uniforms),this.uniformsGroups=uw(t.uniformsGroups),this.defines=Object.assign({},t.defines),this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this.fog=t.fog,this.lights=t.lights,this.clipping=t.clipping,this.extensions=Object.assign({},t.extensions),this.glslVersion=t.glslVersion,this.defaultAttributeValues=Object.assign({},t.defaultAttributeValues),this.index0AttributeName=t.index0AttributeName,this.uniformsNeedUpdate=t.uniformsNeedUpdate,this}toJSON(t){let e=super.toJSON(t);e.glslVersion=this.glslVersion,e.uniforms={};for(let s in this.uniforms){let o=this.uniforms[s].value;o&&o.isTexture?e.uniforms[s]={type:"t",value:o.toJSON(t).uuid}:o&&o.isColor?e.uniforms[s]={type:"c",value:o.getHex()}:o&&o.isVector2?e.uniforms[s]={type:"v2",value:o.toArray()}:o&&o.isVector3?e.uniforms[s]={type:"v3",value:o.toArray()}:o&&o.isVector4?e.uniforms[s]={type:"v4",value:o.toArray()}:o&&o.isMatrix3?e.uniforms[s]={type:"m3",value:o.toArray()}:o&&o.isMatrix4?e.uniforms[s]={type:"m4",value:o.toArray()}:e.uniforms[s]={value:o}}Object.keys(this.defines).length>0&&(e.defines=this.defines),e.vertexShader=this.vertexShader,e.fragmentShader=this.fragmentShader,e.lights=this.lights,e.clipping=this.clipping;let i={};for(let s in this.extensions)this.extensions[s]===!0&&(i[s]=!0);return Object.keys(i).length>0&&(e.extensions=i),e}fromJSON(t,e){if(super.fromJSON(t,e),t.uniforms!==void 0)for(let i in t.uniforms){let s=t.uniforms[i];switch(this.uniforms[i]={},s.type){case"t":this.uniforms[i].value=e[s.value]||null;break;case"c":this.uniforms[i].value=new Xt().setHex(s.value);break;case"v2":this.uniforms[i].value=new at().fromArray(s.value);break;case"v3":this.uniforms[i].value=new N().fromArray(s.value);break;case"v4":this.uniforms[i].value=new Re().fromArray(s.value);break;case"m3":this.uniforms[i].value=new Gt().fromArray(s.value);break;case"m4":this.uniforms[i].value=new oe().fromArray(s.value);break;default:this.uniforms[i].value=s.value}}if(t.defines!==void 0&&(this.defines=t.defines),t.vertexShader!==void 0&&(this.vertexShader=t.vertexShader),t.fragmentShader!==void 0&&(this.fragmentShader=t.fragmentShader),t.glslVersion!==void 0&&(this.glslVersion=t.glslVersion),t.extensions!==void 0)for(let i in t.extensions)this.extensions[i]=t.extensions[i];return t.lights!==void 0&&(this.lights=t.lights),t.clipping!==void 0&&(this.clipping=t.clipping),this}},Zc=class extends Vn{constructor(t){super(t),this.isRawShaderMaterial=!0,this.type="RawShaderMaterial"}};var Zs=class extends xi{constructor(t){super(),this.isMeshLambertMaterial=!0,this.type="MeshLambertMaterial",this.color=new Xt(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.emissive=new Xt(0),this.emissiveIntensity=1,this.emissiveMap=null,this.bumpMap=null,this.bumpScale=1,this.normalMap=null,this.normalMapType=Ku,this.normalScale=new at(1,1),this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new $i,this.combine=uu,this.reflectivity=1,this.envMapIntensity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.flatShading=!1,this.fog=!0,this.setValues(t)}copy(t){return super.copy(t),this.color.copy(t.color),this.map=t.map,this.lightMap=t.lightMap,this.lightMapIntensity=t.lightMapIntensity,this.aoMap=t.aoMap,this.aoMapIntensity=t.aoMapIntensity,this.emissive.copy(t.emissive),this.emissiveMap=t.emissiveMap,this.emissiveIntensity=t.emissiveIntensity,this.bumpMap=t.bumpMap,this.bumpScale=t.bumpScale,this.normalMap=t.normalMap,this.normalMapType=t.normalMapType,this.normalScale.copy(t.normalScale),this.displacementMap=t.displacementMap,this.displacementScale=t.displacementScale,this.displacementBias=t.displacementBias,this.specularMap=t.specularMap,this.alphaMap=t.alphaMap,this.envMap=t.envMap,this.envMapRotation.copy(t.envMapRotation),this.combine=t.combine,this.reflectivity=t.reflectivity,this.envMapIntensity=t.envMapIntensity,this.refractionRatio=t.refractionRatio,this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this.wireframeLinecap=t.wireframeLinecap,this.wireframeLinejoin=t.wireframeLinejoin,this.flatShading=t.flatShading,this.fog=t.fog,this}},Jc=class extends xi{constructor(t){super(),this.isMeshDepthMaterial=!0,this.type="MeshDepthMaterial",this.depthPacking=B0,this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.wireframe=!1,this.wireframeLinewidth=1,this.setValues(t)}copy(t){return super.copy(t),this.depthPacking=t.depthPacking,this.map=t.map,this.alphaMap=t.alphaMap,this.displacementMap=t.displacementMap,this.displacementScale=t.displacementScale,this.displacementBias=t.displacementBias,this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this}},Kc=class extends xi{constructor(t){super(),this.isMeshDistanceMaterial=!0,this.type="MeshDistanceMaterial",this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.setValues(t)}copy(t){return super.copy(t),this.map=t.map,this.alphaMap=t.alphaMap,this.displacementMap=t.displacementMap,this.displacementScale=t.displacementScale,this.displacementBias=t.displacementBias,this}};function Vr(n,t){return!n||n.constructor===t?n:typeof t.BYTES_PER_ELEMENT=="number"?new t(n):Array.prototype.slice.call(n)}function bc(n){return n!==void 0&&n.inTangents!==void 0&&n.outTangents!==void 0}var vs=class{constructor(t,e,i,s){this.parameterPositions=t,this._cachedIndex=0,this.resultBuffer=s!==void 0?s:new e.constructor(i),this.sampleValues=e,this.valueSize=i,this.settings=null,this.DefaultSettings_={}}evaluate(t){let e=this.parameterPositions,i=this._cachedIndex,s=e[i],r=e[i-1];t:{e:{let o;n:{i:if(!(t<s)){for(let a=i+2;;){if(s===void 0){if(t<r)break i;return i=e.length,this._cachedIndex=i,this.copySampleValue_(i-1)}if(i===a)break;if(r=s,s=e[++i],t<s)break e}o=e.length;break n}if(!(t>=r)){let a=e[1];t<a&&(i=2,r=a);for(let l=i-2;;){if(r===void 0)return this._cachedIndex=0,this.copySampleValue_(0);if(i===l)break;if(s=r,r=e[--i-1],t>=r)break e}o=i,i=0;break n}break t}for(;i<o;){let a=i+o>>>1;t<e[a]?o=a:i=a+1}if(s=e[i],r=e[i-1],r===void 0)return this._cachedIndex=0,this.copySampleValue_(0);if(s===void 0)return i=e.length,this._cachedIndex=i,this.copySampleValue_(i-1)}this._cachedIndex=i,this.intervalChanged_(i,r,s)}return this.interpolate_(i,r,t,s)}getSettings_(){return this.settings||this.DefaultSettings_}copySampleValue_(t){let e=this.resultBuffer,i=this.sampleValues,s=this.valueSize,r=t*s;for(let o=0;o!==s;++o)e[o]=i[r+o];return e}interpolate_(){throw new Error("THREE.Interpolant: Call to abstract method.")}intervalChanged_(){}},jc=class extends vs{constructor(t,e,i,s){super(t,e,i,s),this._weightPrev=-0,this._offsetPrev=-0,this._weightNext=-0,this._offsetNext=-0,this.DefaultSettings_={endingStart:tf,endingEnd:tf}}intervalChanged_(t,e,i){let s=this.parameterPositions,r=t-2,o=t+1,a=s[r],l=s[o];if(a===void 0)switch(this.getSettings_().endingStart){case ef:r=t,a=2*e-i;break;case nf:r=s.length-2,a=e+s[r]-s[r+1];break;default:r=t,a=i}if(l===void 0)switch(this.getSettings_().endingEnd){case ef:o=t,l=2*i-e;break;case nf:o=1,l=i+s[1]-s[0];break;default:o=t-1,l=e}let u=(i-e)*.5,h=this.valueSize;this._weightPrev=u/(e-a),this._weightNext=u/(l-i),this._offsetPrev=r*h,this._offsetNext=o*h}interpolate_(t,e,i,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=t*a,u=l-a,h=this._offsetPrev,d=this._offsetNext,p=this._weightPrev,f=this._weightNext,g=(i-e)/(s-e),_=g*g,v=_*g,m=-p*v+2*p*_-p*g,y=(1+p)*v+(-1.5-2*p)*_+(-.5+p)*g+1,M=(-1-f)*v+(1.5+f)*_+.5*g,b=f*v-f*_;for(let E=0;E!==a;++E)r[E]=m*o[h+E]+y*o[u+E]+M*o[l+E]+b*o[d+E];return r}},Qc=class extends vs{constructor(t,e,i,s){super(t,e,i,s)}interpolate_(t,e,i,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=t*a,u=l-a,h=(i-e)/(s-e),d=1-h;for(let p=0;p!==a;++p)r[p]=o[u+p]*d+o[l+p]*h;return r}},tu=class extends vs{constructor(t,e,i,s){super(t,e,i,s)}interpolate_(t){return this.copySampleValue_(t-1)}},eu=class extends vs{interpolate_(t,e,i,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=t*a,u=l-a,h=this.inTangents,d=this.outTangents;if(!h||!d){let g=(i-e)/(s-e),_=1-g;for(let v=0;v!==a;++v)r[v]=o[u+v]*_+o[l+v]*g;return r}let p=a*2,f=t-1;for(let g=0;g!==a;++g){let _=o[u+g],v=o[l+g],m=f*p+g*2,y=d[m],M=d[m+1],b=t*p+g*2,E=h[b],A=h[b+1],x=pw(i,e,y,E,s);r[g]=ov(x,_,M,A,v)}return r}};function ov(n,t,e,i,s){let r=1-n;return r*r*r*t+3*r*r*n*e+3*r*n*n*i+n*n*n*s}function fw(n,t,e,i,s){let r=1-n;return 3*r*r*(e-t)+6*r*n*(i-e)+3*n*n*(s-i)}function pw(n,t,e,i,s){let r=(n-t)/(s-t);for(let o=0;o<8;o++){let a=ov(r,t,e,i,s)-n;if(Math.abs(a)<1e-10)break;let l=fw(r,t,e,i,s);if(Math.abs(l)<1e-10)break;r=Math.max(0,Math.min(1,r-a/l))}return r}var Gn=class{constructor(t,e,i,s){if(t===void 0)throw new Error("THREE.KeyframeTrack: track name is undefined");if(e===void 0||e.length===0)throw new Error("THREE.KeyframeTrack: no keyframes in track named "+t);this.name=t,this.times=Vr(e,this.TimeBufferType),this.values=Vr(i,this.ValueBufferType),this.setInterpolation(s||this.DefaultInterpolation)}static toJSON(t){let e=t.constructor,i;if(e.toJSON!==this.toJSON)i=e.toJSON(t);else{i={name:t.name,times:Vr(t.times,Array),values:Vr(t.values,Array)};let s=t.getInterpolation();s!==t.DefaultInterpolation&&(i.interpolation=s),bc(t.settings)&&(i.settings={inTangents:Vr(t.settings.inTangents,Array),outTangents:Vr(t.settings.outTangents,Array)})}return i.type=t.ValueTypeName,i}InterpolantFactoryMethodDiscrete(t){return new tu(this.times,this.values,this.getValueSize(),t)}InterpolantFactoryMethodLinear(t){return new Qc(this.times,this.values,this.getValueSize(),t)}InterpolantFactoryMethodSmooth(t){return new jc(this.times,this.values,this.getValueSize(),t)}InterpolantFactoryMethodBezier(t){let e=new eu(this.times,this.values,this.getValueSize(),t);return this.settings&&(e.inTangents=this.settings.inTangents,e.outTangents=this.settings.outTangents),e}setInterpolation(t){let e;switch(t){case ca:e=this.InterpolantFactoryMethodDiscrete;break;case Uc:e=this.InterpolantFactoryMethodLinear;break;case Sc:e=this.InterpolantFactoryMethodSmooth;break;case Qd:e=this.InterpolantFactoryMethodBezier;break}if(e===void 0){let i="unsupported interpolation for "+this.ValueTypeName+" keyframe track named "+this.name;if(this.createInterpolant===void 0)if(t!==this.DefaultInterpolation)this.setInterpolation(this.DefaultInterpolation);else throw new Error(i);return Nt("KeyframeTrack:",i),this}return this.createInterpolant=e,this}getInterpolation(){switch(this.createInterpolant){case this.InterpolantFactoryMethodDiscrete:return ca;case this.InterpolantFactoryMethodLinear:return Uc;case this.InterpolantFactoryMethodSmooth:return Sc;case this.InterpolantFactoryMethodBezier:return Qd}}getValueSize(){return this.values.length/this.times.length}shift(t){if(t!==0){let e=this.times;for(let i=0,s=e.length;i!==s;++i)e[i]+=t;bc(this.settings)&&(c0(this.settings.inTangents,t),c0(this.settings.outTangents,t))}return this}scale(t){if(t!==1){let e=this.times;for(let i=0,s=e.length;i!==s;++i)e[i]*=t;bc(this.settings)&&(u0(this.settings.inTangents,t),u0(this.settings.outTangents,t))}return this}trim(t,e){let i=this.times,s=i.length,r=0,o=s-1;for(;r!==s&&i[r]<t;)++r;for(;o!==-1&&i[o]>e;)--o;if(++o,r!==0||o!==s){r>=o&&(o=Math.max(o,1),r=o-1);let a=this.getValueSize();this.times=i.slice(r,o),this.values=this.values.slice(r*a,o*a)}return this}validate(){let t=!0,e=this.getValueSize();e-Math.floor(e)!==0&&(Bt("KeyframeTrack: Invalid value size in track.",this),t=!1);let i=this.times,s=this.values,r=i.length;r===0&&(Bt("KeyframeTrack: Track is empty.",this),t=!1);let o=null;for(let a=0;a!==r;a++){let l=i[a];if(typeof l=="number"&&isNaN(l)){Bt("KeyframeTrack: Time is not a valid number.",this,a,l),t=!1;break}if(o!==null&&o>l){Bt("KeyframeTrack: Out of order keys.",this,a,l,o),t=!1;break}o=l}if(s!==void 0&&sb(s))for(let a=0,l=s.length;a!==l;++a){let u=s[a];if(isNaN(u)){Bt("KeyframeTrack: Value is not a valid number.",this,a,u),t=!1;break}}return t}optimize(){let t=this.times.slice(),e=this.values.slice(),i=this.getValueSize(),s=this.getInterpolation()===Sc,r=t.length-1,o=1;for(let a=1;a<r;++a){let l=!1,u=t[a],h=t[a+1];if(u!==h&&(a!==1||u!==t[0]))if(s)l=!0;else{let d=a*i,p=d-i,f=d+i;for(let g=0;g!==i;++g){let _=e[d+g];if(_!==e[p+g]||_!==e[f+g]){l=!0;break}}}if(l){if(a!==o){t[o]=t[a];let d=a*i,p=o*i;for(let f=0;f!==i;++f)e[p+f]=e[d+f]}++o}}if(r>0){t[o]=t[r];for(let a=r*i,l=o*i,u=0;u!==i;++u)e[l+u]=e[a+u];++o}return o!==t.length?(this.times=t.slice(0,o),this.values=e.slice(0,o*i)):(this.times=t,this.values=e),this}clone(){let t=this.times.slice(),e=this.values.slice(),i=this.constructor,s=new i(this.name,t,e);return s.createInterpolant=this.createInterpolant,bc(this.settings)&&(s.settings={inTangents:this.settings.inTangents.slice(),outTangents:this.settings.outTangents.slice()}),s}};function c0(n,t){for(let e=0,i=n.length;e!==i;e+=2)n[e]+=t}function u0(n,t){for(let e=0,i=n.length;e!==i;e+=2)n[e]*=t}Gn.prototype.ValueTypeName="";Gn.prototype.TimeBufferType=Float32Array;Gn.prototype.ValueBufferType=Float32Array;Gn.prototype.DefaultInterpolation=Uc;var _s=class extends Gn{constructor(t,e,i){super(t,e,i)}};_s.prototype.ValueTypeName="bool";_s.prototype.ValueBufferType=Array;_s.prototype.DefaultInterpolation=ca;_s.prototype.InterpolantFactoryMethodLinear=void 0;_s.prototype.InterpolantFactoryMethodSmooth=void 0;var nu=class extends Gn{constructor(t,e,i,s){super(t,e,i,s)}};nu.prototype.ValueTypeName="color";var iu=class extends Gn{constructor(t,e,i,s){super(t,e,i,s)}};iu.prototype.ValueTypeName="number";var su=class extends vs{constructor(t,e,i,s){super(t,e,i,s)}interpolate_(t,e,i,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=(i-e)/(s-e),u=t*a;for(let h=u+a;u!==h;u+=4)Xe.slerpFlat(r,0,o,u-a,o,u,l);return r}},Ua=class extends Gn{constructor(t,e,i,s){super(t,e,i,s)}InterpolantFactoryMethodLinear(t){return new su(this.times,this.values,this.getValueSize(),t)}};Ua.prototype.ValueTypeName="quaternion";Ua.prototype.InterpolantFactoryMethodSmooth=void 0;var ys=class extends Gn{constructor(t,e,i){super(t,e,i)}};ys.prototype.ValueTypeName="string";ys.prototype.ValueBufferType=Array;ys.prototype.DefaultInterpolation=ca;ys.prototype.InterpolantFactoryMethodLinear=void 0;ys.prototype.InterpolantFactoryMethodSmooth=void 0;var ru=class extends Gn{constructor(t,e,i,s){super(t,e,i,s)}};ru.prototype.ValueTypeName="vector";var ou=class{constructor(t,e,i){let s=this,r=!1,o=0,a=0,l,u=[];this.onStart=void 0,this.onLoad=t,this.onProgress=e,this.onError=i,this._abortController=null,this.itemStart=function(h){a++,r===!1&&s.onStart!==void 0&&s.onStart(h,o,a),r=!0},this.itemEnd=function(h){o++,s.onProgress!==void 0&&s.onProgress(h,o,a),o===a&&(r=!1,s.onLoad!==void 0&&s.onLoad())},this.itemError=function(h){s.onError!==void 0&&s.onError(h)},this.resolveURL=function(h){return h=h.normalize("NFC"),l?l(h):h},this.setURLModifier=function(h){return l=h,this},this.addHandler=function(h,d){return u.push(h,d),this},this.removeHandler=function(h){let d=u.indexOf(h);return d!==-1&&u.splice(d,2),this},this.getHandler=function(h){for(let d=0,p=u.length;d<p;d+=2){let f=u[d],g=u[d+1];if(f.global&&(f.lastIndex=0),f.test(h))return g}return null},this.abort=function(){return this.abortController.abort(),this._abortController=null,this}}get abortController(){return this._abortController||(this._abortController=new AbortController),this._abortController}},av=new ou,au=class{constructor(t){this.manager=t!==void 0?t:av,this.crossOrigin="anonymous",this.withCredentials=!1,this.path="",this.resourcePath="",this.requestHeader={},this.priority="auto",this.cache="default",typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}load(){}loadAsync(t,e){let i=this;return new Promise(function(s,r){i.load(t,s,e,r)})}parse(){}setCrossOrigin(t){return this.crossOrigin=t,this}setWithCredentials(t){return this.withCredentials=t,this}setPath(t){return this.path=t,this}setResourcePath(t){return this.resourcePath=t,this}setRequestHeader(t){return this.requestHeader=t,this}setPriority(t){return this.priority=t,this}setCache(t){return this.cache=t,this}abort(){return this}};au.DEFAULT_MATERIAL_NAME="__DEFAULT";var Oa=class extends en{static registerNode(t){this.prototype._lightNode=t}constructor(t,e=1){super(),this.isLight=!0,this.type="Light",this.color=new Xt(t),this.intensity=e}copy(t,e){return super.copy(t,e),this.color.copy(t.color),this.intensity=t.intensity,this}toJSON(t){let e=super.toJSON(t);return e.object.color=this.color.getHex(),e.object.intensity=this.intensity,e}},ka=class extends Oa{constructor(t,e,i){super(t,i),this.isHemisphereLight=!0,this.type="HemisphereLight",this.position.copy(en.DEFAULT_UP),this.updateMatrix(),this.groundColor=new Xt(e)}copy(t,e){return super.copy(t,e),this.groundColor.copy(t.groundColor),this}toJSON(t){let e=super.toJSON(t);return e.object.groundColor=this.groundColor.getHex(),e}},jd=new oe,h0=new N,d0=new N,lu=class{constructor(t){this.camera=t,this.intensity=1,this.bias=0,this.biasNode=null,this.normalBias=0,this.radius=1,this.blurSamples=8,this.mapSize=new at(512,512),this.mapType=Rn,this.map=null,this.mapPass=null,this.matrix=new oe,this.autoUpdate=!0,this.needsUpdate=!1,this._frustum=new fs,this._frameExtents=new at(1,1),this._viewportCount=1,this._viewports=[new Re(0,0,1,1)]}getViewportCount(){return this._viewportCount}getCamera(){return this.camera}getFrustum(){return this._frustum}updateMatrices(t){let e=this.camera;h0.setFromMatrixPosition(t.matrixWorld),e.position.copy(h0),d0.setFromMatrixPosition(t.target.matrixWorld),e.lookAt(d0),e.updateMatrixWorld(),this._updateMatrix(e,this.matrix,this._frustum)}_updateMatrix(t,e,i,s){jd.multiplyMatrices(t.projectionMatrix,t.matrixWorldInverse),i.setFromProjectionMatrix(jd,t.coordinateSystem,t.reversedDepth);let r=this._frameExtents,o=s?s.z/r.x:1,a=s?s.w/r.y:1,l=s?s.x/r.x:0,u=s?s.y/r.y:0;t.coordinateSystem===qr||t.reversedDepth?e.set(.5*o,0,0,.5*o+l,0,.5*a,0,.5*a+u,0,0,1,0,0,0,0,1):e.set(.5*o,0,0,.5*o+l,0,.5*a,0,.5*a+u,0,0,.5,.5,0,0,0,1),e.multiply(jd)}getViewport(t){return this._viewports[t]}getFrameExtents(){return this._frameExtents}dispose(){this.map&&this.map.dispose(),this.mapPass&&this.mapPass.dispose()}copy(t){return this.camera=t.camera.clone(),this.intensity=t.intensity,this.bias=t.bias,this.radius=t.radius,this.autoUpdate=t.autoUpdate,this.needsUpdate=t.needsUpdate,this.normalBias=t.normalBias,this.blurSamples=t.blurSamples,this.mapSize.copy(t.mapSize),this.mapType=t.mapType,this.biasNode=t.biasNode,this}clone(){return new this.constructor().copy(this)}toJSON(){let t={};return t.intensity=this.intensity,t.bias=this.bias,t.normalBias=this.normalBias,t.radius=this.radius,t.blurSamples=this.blurSamples,t.mapSize=this.mapSize.toArray(),t.mapType=this.mapType,t.camera=this.camera.toJSON(!1).object,delete t.camera.matrix,t}},wc=new N,Mc=new Xe,mi=new N,Fa=class extends en{constructor(){super(),this.isCamera=!0,this.type="Camera",this.matrixWorldInverse=new oe,this.projectionMatrix=new oe,this.projectionMatrixInverse=new oe,this.coordinateSystem=Kn,this._reversedDepth=!1}get reversedDepth(){return this._reversedDepth}copy(t,e){return super.copy(t,e),this.matrixWorldInverse.copy(t.matrixWorldInverse),this.projectionMatrix.copy(t.projectionMatrix),this.projectionMatrixInverse.copy(t.projectionMatrixInverse),this.coordinateSystem=t.coordinateSystem,this}getWorldDirection(t){return super.getWorldDirection(t).negate()}updateMatrixWorld(t){super.updateMatrixWorld(t),this.matrixWorld.decompose(wc,Mc,mi),mi.x===1&&mi.y===1&&mi.z===1?this.matrixWorldInverse.copy(this.matrixWorld).invert():this.matrixWorldInverse.compose(wc,Mc,mi.set(1,1,1)).invert()}updateWorldMatrix(t,e,i=!1){super.updateWorldMatrix(t,e,i),this.matrixWorld.decompose(wc,Mc,mi),mi.x===1&&mi.y===1&&mi.z===1?this.matrixWorldInverse.copy(this.matrixWorld).invert():this.matrixWorldInverse.compose(wc,Mc,mi.set(1,1,1)).invert()}clone(){return new this.constructor().copy(this)}},us=new N,f0=new at,p0=new at,xn=class extends Fa{constructor(t=50,e=1,i=.1,s=2e3){super(),this.isPerspectiveCamera=!0,this.type="PerspectiveCamera",this.fov=t,this.zoom=1,this.near=i,this.far=s,this.focus=10,this.aspect=e,this.view=null,this.filmGauge=35,this.filmOffset=0,this.updateProjectionMatrix()}copy(t,e){return super.copy(t,e),this.fov=t.fov,this.zoom=t.zoom,this.near=t.near,this.far=t.far,this.focus=t.focus,this.aspect=t.aspect,this.view=t.view===null?null:Object.assign({},t.view),this.filmGauge=t.filmGauge,this.filmOffset=t.filmOffset,this}setFocalLength(t){let e=.5*this.getFilmHeight()/t;this.fov=Zr*2*Math.atan(e),this.updateProjectionMatrix()}getFocalLength(){let t=Math.tan(ra*.5*this.fov);return .5*this.getFilmHeight()/t}getEffectiveFOV(){return Zr*2*Math.atan(Math.tan(ra*.5*this.fov)/this.zoom)}getFilmWidth(){return this.filmGauge*Math.min(this.aspect,1)}getFilmHeight(){return this.filmGauge/Math.max(this.aspect,1)}getViewBounds(t,e,i){us.set(-1,-1,.5).applyMatrix4(this.projectionMatrixInverse),e.set(us.x,us.y).multiplyScalar(-t/us.z),us.set(1,1,.5).applyMatrix4(this.projectionMatrixInverse),i.set(us.x,us.y).multiplyScalar(-t/us.z)}getViewSize(t,e){return this.getViewBounds(t,f0,p0),e.subVectors(p0,f0)}setViewOffset(t,e,i,s,r,o){this.aspect=t/e,this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=t,this.view.fullHeight=e,this.view.offsetX=i,this.view.offsetY=s,this.view.width=r,this.view.height=o,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){let t=this.near,e=t*Math.tan(ra*.5*this.fov)/this.zoom,i=2*e,s=this.aspect*i,r=-.5*s,o=this.view;if(this.view!==null&&this.view.enabled){let l=o.fullWidth,u=o.fullHeight;r+=o.offsetX*s/l,e-=o.offsetY*i/u,s*=o.width/l,i*=o.height/u}let a=this.filmOffset;a!==0&&(r+=t*a/this.getFilmWidth()),this.projectionMatrix.makePerspective(r,r+s,e,e-i,t,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(t){let e=super.toJSON(t);return e.object.fov=this.fov,e.object.zoom=this.zoom,e.object.near=this.near,e.object.far=this.far,e.object.focus=this.focus,e.object.aspect=this.aspect,this.view!==null&&(e.object.view=Object.assign({},this.view)),e.object.filmGauge=this.filmGauge,e.object.filmOffset=this.filmOffset,e}};var Ba=class extends Fa{constructor(t=-1,e=1,i=1,s=-1,r=.1,o=2e3){super(),this.isOrthographicCamera=!0,this.type="OrthographicCamera",this.zoom=1,this.view=null,this.left=t,this.right=e,this.top=i,this.bottom=s,this.near=r,this.far=o,this.updateProjectionMatrix()}copy(t,e){return super.copy(t,e),this.left=t.left,this.right=t.right,this.top=t.top,this.bottom=t.bottom,this.near=t.near,this.far=t.far,this.zoom=t.zoom,this.view=t.view===null?null:Object.assign({},t.view),this}setViewOffset(t,e,i,s,r,o){this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=t,this.view.fullHeight=e,this.view.offsetX=i,this.view.offsetY=s,this.view.width=r,this.view.height=o,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){let t=(this.right-this.left)/(2*this.zoom),e=(this.top-this.bottom)/(2*this.zoom),i=(this.right+this.left)/2,s=(this.top+this.bottom)/2,r=i-t,o=i+t,a=s+e,l=s-e;if(this.view!==null&&this.view.enabled){let u=(this.right-this.left)/this.view.fullWidth/this.zoom,h=(this.top-this.bottom)/this.view.fullHeight/this.zoom;r+=u*this.view.offsetX,o=r+u*this.view.width,a-=h*this.view.offsetY,l=a-h*this.view.height}this.projectionMatrix.makeOrthographic(r,o,a,l,this.near,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(t){let e=super.toJSON(t);return e.object.zoom=this.zoom,e.object.left=this.left,e.object.right=this.right,e.object.top=this.top,e.object.bottom=this.bottom,e.object.near=this.near,e.object.far=this.far,this.view!==null&&(e.object.view=Object.assign({},this.view)),e}},lf=class extends lu{constructor(){super(new Ba(-5,5,5,-5,.5,500)),this.isDirectionalLightShadow=!0}},za=class extends Oa{constructor(t,e){super(t,e),this.isDirectionalLight=!0,this.type="DirectionalLight",this.position.copy(en.DEFAULT_UP),this.updateMatrix(),this.target=new en,this.shadow=new lf}dispose(){super.dispose(),this.shadow.dispose()}copy(t){return super.copy(t),this.target=t.target.clone(),this.shadow=t.shadow.clone(),this}toJSON(t){let e=super.toJSON(t);return e.object.shadow=this.shadow.toJSON(),e.object.target=this.target.uuid,e}};var Gr=-90,Hr=1,io=class extends en{constructor(t,e,i){super(),this.type="CubeCamera",this.renderTarget=i,this.coordinateSystem=null,this.activeMipmapLevel=0;let s=new xn(Gr,Hr,t,e);s.layers=this.layers,this.add(s);let r=new xn(Gr,Hr,t,e);r.layers=this.layers,this.add(r);let o=new xn(Gr,Hr,t,e);o.layers=this.layers,this.add(o);let a=new xn(Gr,Hr,t,e);a.layers=this.layers,this.add(a);let l=new xn(Gr,Hr,t,e);l.layers=this.layers,this.add(l);let u=new xn(Gr,Hr,t,e);u.layers=this.layers,this.add(u)}updateCoordinateSystem(){let t=this.coordinateSystem,e=this.children.concat(),[i,s,r,o,a,l]=e;for(let u of e)this.remove(u);if(t===Kn)i.up.set(0,1,0),i.lookAt(1,0,0),s.up.set(0,1,0),s.lookAt(-1,0,0),r.up.set(0,0,-1),r.lookAt(0,1,0),o.up.set(0,0,1),o.lookAt(0,-1,0),a.up.set(0,1,0),a.lookAt(0,0,1),l.up.set(0,1,0),l.lookAt(0,0,-1);else if(t===qr)i.up.set(0,-1,0),i.lookAt(-1,0,0),s.up.set(0,-1,0),s.lookAt(1,0,0),r.up.set(0,0,1),r.lookAt(0,1,0),o.up.set(0,0,-1),o.lookAt(0,-1,0),a.up.set(0,-1,0),a.lookAt(0,0,1),l.up.set(0,-1,0),l.lookAt(0,0,-1);else throw new Error("THREE.CubeCamera.updateCoordinateSystem(): Invalid coordinate system: "+t);for(let u of e)this.add(u),u.updateMatrixWorld()}update(t,e){this.parent===null&&this.updateMatrixWorld();let{renderTarget:i,activeMipmapLevel:s}=this;this.coordinateSystem!==t.coordinateSystem&&(this.coordinateSystem=t.coordinateSystem,this.updateCoordinateSystem());let[r,o,a,l,u,h]=this.children,d=t.getRenderTarget(),p=t.getActiveCubeFace(),f=t.getActiveMipmapLevel(),g=t.xr.enabled;t.xr.enabled=!1;let _=i.texture.mipmapsAutoUpdate;i.texture.mipmapsAutoUpdate=!1;let v=!1;t.isWebGLRenderer===!0?v=t.state.buffers.depth.getReversed():v=t.reversedDepthBuffer,t.setRenderTarget(i,0,s),v&&t.autoClear===!1&&t.clearDepth(),t.render(e,r),t.setRenderTarget(i,1,s),v&&t.autoClear===!1&&t.clearDepth(),t.render(e,o),t.setRenderTarget(i,2,s),v&&t.autoClear===!1&&t.clearDepth(),t.render(e,a),t.setRenderTarget(i,3,s),v&&t.autoClear===!1&&t.clearDepth(),t.render(e,l),t.setRenderTarget(i,4,s),v&&t.autoClear===!1&&t.clearDepth(),t.render(e,u),i.texture.mipmapsAutoUpdate=_,t.setRenderTarget(i,5,s),v&&t.autoClear===!1&&t.clearDepth(),t.render(e,h),t.setRenderTarget(d,p,f),t.xr.enabled=g,i.texture.needsPMREMUpdate=!0}},cu=class extends xn{constructor(t=[]){super(),this.isArrayCamera=!0,this.isMultiViewCamera=!1,this.cameras=t,this.perCameraFrustumCulled=!1}};var zf="\\[\\]\\.:\\/",mw=new RegExp("["+zf+"]","g"),Vf="[^"+zf+"]",gw="[^"+zf.replace("\\.","")+"]",vw=/((?:WC+[\/:])*)/.source.replace("WC",Vf),_w=/(WCOD+)?/.source.replace("WCOD",gw),yw=/(?:\.(WC+)(?:\[(.+)\])?)?/.source.replace("WC",Vf),xw=/\.(WC+)(?:\[(.+)\])?/.source.replace("WC",Vf),bw=new RegExp("^"+vw+_w+yw+xw+"$"),ww=["material","materials","bones","map"],cf=class{constructor(t,e,i){let s=i||Se.parseTrackName(e);this._targetGroup=t,this._bindings=t.subscribe_(e,s)}getValue(t,e){this.bind();let i=this._targetGroup.nCachedObjects_,s=this._bindings[i];s!==void 0&&s.getValue(t,e)}setValue(t,e){let i=this._bindings;for(let s=this._targetGroup.nCachedObjects_,r=i.length;s!==r;++s)i[s].setValue(t,e)}bind(){let t=this._bindings;for(let e=this._targetGroup.nCachedObjects_,i=t.length;e!==i;++e)t[e].bind()}unbind(){let t=this._bindings;for(let e=this._targetGroup.nCachedObjects_,i=t.length;e!==i;++e)t[e].unbind()}},Se=class n{constructor(t,e,i){this.path=e,this.parsedPath=i||n.parseTrackName(e),this.node=n.findNode(t,this.parsedPath.nodeName),this.rootNode=t,this.getValue=this._getValue_unbound,this.setValue=this._setValue_unbound}static create(t,e,i){return t&&t.isAnimationObjectGroup?new n.Composite(t,e,i):new n(t,e,i)}static sanitizeNodeName(t){return t.replace(/\s/g,"_").replace(mw,"")}static parseTrackName(t){let e=bw.exec(t);if(e===null)throw new Error("THREE.PropertyBinding: Cannot parse trackName: "+t);let i={nodeName:e[2],objectName:e[3],objectIndex:e[4],propertyName:e[5],propertyIndex:e[6]},s=i.nodeName&&i.nodeName.lastIndexOf(".");if(s!==void 0&&s!==-1){let r=i.nodeName.substring(s+1);ww.indexOf(r)!==-1&&(i.nodeName=i.nodeName.substring(0,s),i.objectName=r)}if(i.propertyName===null||i.propertyName.length===0)throw new Error("THREE.PropertyBinding: can not parse propertyName from trackName: "+t);return i}static findNode(t,e){if(e===void 0||e===""||e==="."||e===-1||e===t.name||e===t.uuid)return t;if(t.skeleton){let i=t.skeleton.getBoneByName(e);if(i!==void 0)return i}if(t.children){let i=function(r){for(let o=0;o<r.length;o++){let a=r[o];if(a.name===e||a.uuid===e)return a;let l=i(a.children);if(l)return l}return null},s=i(t.children);if(s)return s}return null}_getValue_unavailable(){}_setValue_unavailable(){}_getValue_direct(t,e){t[e]=this.targetObject[this.propertyName]}_getValue_array(t,e){let i=this.resolvedProperty;for(let s=0,r=i.length;s!==r;++s)t[e++]=i[s]}_getValue_arrayElement(t,e){t[e]=this.resolvedProperty[this.propertyIndex]}_getValue_toArray(t,e){this.resolvedProperty.toArray(t,e)}_setValue_direct(t,e){this.targetObject[this.propertyName]=t[e]}_setValue_direct_setNeedsUpdate(t,e){this.targetObject[this.propertyName]=t[e],this.targetObject.needsUpdate=!0}_setValue_direct_setMatrixWorldNeedsUpdate(t,e){this.targetObject[this.propertyName]=t[e],this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_array(t,e){let i=this.resolvedProperty;for(let s=0,r=i.length;s!==r;++s)i[s]=t[e++]}_setValue_array_setNeedsUpdate(t,e){let i=this.resolvedProperty;for(let s=0,r=i.length;s!==r;++s)i[s]=t[e++];this.targetObject.needsUpdate=!0}_setValue_array_setMatrixWorldNeedsUpdate(t,e){let i=this.resolvedProperty;for(let s=0,r=i.length;s!==r;++s)i[s]=t[e++];this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_arrayElement(t,e){this.resolvedProperty[this.propertyIndex]=t[e]}_setValue_arrayElement_setNeedsUpdate(t,e){this.resolvedProperty[this.propertyIndex]=t[e],this.targetObject.needsUpdate=!0}_setValue_arrayElement_setMatrixWorldNeedsUpdate(t,e){this.resolvedProperty[this.propertyIndex]=t[e],this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_fromArray(t,e){this.resolvedProperty.fromArray(t,e)}_setValue_fromArray_setNeedsUpdate(t,e){this.resolvedProperty.fromArray(t,e),this.targetObject.needsUpdate=!0}_setValue_fromArray_setMatrixWorldNeedsUpdate(t,e){this.resolvedProperty.fromArray(t,e),this.targetObject.matrixWorldNeedsUpdate=!0}_getValue_unbound(t,e){this.bind(),this.getValue(t,e)}_setValue_unbound(t,e){this.bind(),this.setValue(t,e)}bind(){let t=this.node,e=this.parsedPath,i=e.objectName,s=e.propertyName,r=e.propertyIndex;if(t||(t=n.findNode(this.rootNode,e.nodeName),this.node=t),this.getValue=this._getValue_unavailable,this.setValue=this._setValue_unavailable,!t){Nt("PropertyBinding: No target node found for track: "+this.path+".");return}if(i){let u=e.objectIndex;switch(i){case"materials":if(!t.material){Bt("PropertyBinding: Can not bind to material as node does not have a material.",this);return}if(!t.material.materials){Bt("PropertyBinding: Can not bind to material.materials as node.material does not have a materials array.",this);return}t=t.material.materials;break;case"bones":if(!t.skeleton){Bt("PropertyBinding: Can not bind to bones as node does not have a skeleton.",this);return}t=t.skeleton.bones;for(let h=0;h<t.length;h++)if(t[h].name===u){u=h;break}break;case"map":if("map"in t){t=t.map;break}if(!t.material){Bt("PropertyBinding: Can not bind to material as node does not have a material.",this);return}if(!t.material.map){Bt("PropertyBinding: Can not bind to material.map as node.material does not have a map.",this);return}t=t.material.map;break;default:if(t[i]===void 0){Bt("PropertyBinding: Can not bind to objectName of node undefined.",this);return}t=t[i]}if(u!==void 0){if(t[u]===void 0){Bt("PropertyBinding: Trying to bind to objectIndex of objectName, but is undefined.",this,t);return}t=t[u]}}let o=t[s];if(o===void 0){let u=e.nodeName;Bt("PropertyBinding: Trying to update property for track: "+u+"."+s+" but it wasn't found.",t);return}let a=this.Versioning.None;this.targetObject=t,t.isMaterial===!0?a=this.Versioning.NeedsUpdate:t.isObject3D===!0&&(a=this.Versioning.MatrixWorldNeedsUpdate);let l=this.BindingType.Direct;if(r!==void 0){if(s==="morphTargetInfluences"){if(!t.geometry){Bt("PropertyBinding: Can not bind to morphTargetInfluences because node does not have a geometry.",this);return}if(!t.geometry.morphAttributes){Bt("PropertyBinding: Can not bind to morphTargetInfluences because node does not have a geometry.morphAttributes.",this);return}t.morphTargetDictionary[r]!==void 0&&(r=t.morphTargetDictionary[r])}l=this.BindingType.ArrayElement,this.resolvedProperty=o,this.propertyIndex=r}else o.fromArray!==void 0&&o.toArray!==void 0?(l=this.BindingType.HasFromToArray,this.resolvedProperty=o):Array.isArray(o)?(l=this.BindingType.EntireArray,this.resolvedProperty=o):this.propertyName=s;this.getValue=this.GetterByBindingType[l],this.setValue=this.SetterByBindingTypeAndVersioning[l][a]}unbind(){this.node=null,this.getValue=this._getValue_unbound,this.setValue=this._setValue_unbound}};Se.Composite=cf;Se.prototype.BindingType={Direct:0,EntireArray:1,ArrayElement:2,HasFromToArray:3};Se.prototype.Versioning={None:0,NeedsUpdate:1,MatrixWorldNeedsUpdate:2};Se.prototype.GetterByBindingType=[Se.prototype._getValue_direct,Se.prototype._getValue_array,Se.prototype._getValue_arrayElement,Se.prototype._getValue_toArray];Se.prototype.SetterByBindingTypeAndVersioning=[[Se.prototype._setValue_direct,Se.prototype._setValue_direct_setNeedsUpdate,Se.prototype._setValue_direct_setMatrixWorldNeedsUpdate],[Se.prototype._setValue_array,Se.prototype._setValue_array_setNeedsUpdate,Se.prototype._setValue_array_setMatrixWorldNeedsUpdate],[Se.prototype._setValue_arrayElement,Se.prototype._setValue_arrayElement_setNeedsUpdate,Se.prototype._setValue_arrayElement_setMatrixWorldNeedsUpdate],[Se.prototype._setValue_fromArray,Se.prototype._setValue_fromArray_setNeedsUpdate,Se.prototype._setValue_fromArray_setMatrixWorldNeedsUpdate]];var TP=new Float32Array(1);var so=class{constructor(t=1,e=0,i=0){this.radius=t,this.phi=e,this.theta=i}set(t,e,i){return this.radius=t,this.phi=e,this.theta=i,this}copy(t){return this.radius=t.radius,this.phi=t.phi,this.theta=t.theta,this}makeSafe(){return this.phi=Yt(this.phi,1e-6,Math.PI-1e-6),this}setFromVector3(t){return this.setFromCartesianCoords(t.x,t.y,t.z)}setFromCartesianCoords(t,e,i){return this.radius=Math.sqrt(t*t+e*e+i*i),this.radius===0?(this.theta=0,this.phi=0):(this.theta=Math.atan2(t,i),this.phi=Math.acos(Yt(e/this.radius,-1,1))),this}clone(){return new this.constructor().copy(this)}};var uf=class{static{this.prototype.isMatrix2=!0}constructor(t,e,i,s){this.elements=[1,0,0,1],t!==void 0&&this.set(t,e,i,s)}identity(){return this.set(1,0,0,1),this}fromArray(t,e=0){for(let i=0;i<4;i++)this.elements[i]=t[i+e];return this}set(t,e,i,s){let r=this.elements;return r[0]=t,r[2]=e,r[1]=i,r[3]=s,this}};var Va=class extends ui{constructor(t,e=null){super(),this.object=t,this.domElement=e,this.enabled=!0,this.state=-1,this.keys={},this.mouseButtons={LEFT:null,MIDDLE:null,RIGHT:null},this.touches={ONE:null,TWO:null}}connect(t){this.domElement!==null&&this.disconnect(),this.domElement=t}disconnect(){}dispose(){}update(){}};function Gf(n,t,e,i){let s=Mw(i);switch(e){case Cf:return n*t;case vu:return n*t/s.components*s.byteLength;case _u:return n*t/s.components*s.byteLength;case Ss:return n*t*2/s.components*s.byteLength;case yu:return n*t*2/s.components*s.byteLength;case Rf:return n*t*3/s.components*s.byteLength;case fi:return n*t*4/s.components*s.byteLength;case xu:return n*t*4/s.components*s.byteLength;case Wa:case $a:return Math.floor((n+3)/4)*Math.floor((t+3)/4)*8;case Xa:case qa:return Math.floor((n+3)/4)*Math.floor((t+3)/4)*16;case wu:case Su:return Math.max(n,16)*Math.max(t,8)/4;case bu:case Mu:return Math.max(n,8)*Math.max(t,8)/2;case Tu:case Au:case Cu:case Ru:return Math.floor((n+3)/4)*Math.floor((t+3)/4)*8;case Eu:case Ya:case Pu:return Math.floor((n+3)/4)*Math.floor((t+3)/4)*16;case Iu:return Math.floor((n+3)/4)*Math.floor((t+3)/4)*16;case Du:return Math.floor((n+4)/5)*Math.floor((t+3)/4)*16;case Lu:return Math.floor((n+4)/5)*Math.floor((t+4)/5)*16;case Nu:return Math.floor((n+5)/6)*Math.floor((t+4)/5)*16;case Uu:return Math.floor((n+5)/6)*Math.floor((t+5)/6)*16;case Ou:return Math.floor((n+7)/8)*Math.floor((t+4)/5)*16;case ku:return Math.floor((n+7)/8)*Math.floor((t+5)/6)*16;case Fu:return Math.floor((n+7)/8)*Math.floor((t+7)/8)*16;case Bu:return Math.floor((n+9)/10)*Math.floor((t+4)/5)*16;case zu:return Math.floor((n+9)/10)*Math.floor((t+5)/6)*16;case Vu:return Math.floor((n+9)/10)*Math.floor((t+7)/8)*16;case Gu:return Math.floor((n+9)/10)*Math.floor((t+9)/10)*16;case Hu:return Math.floor((n+11)/12)*Math.floor((t+9)/10)*16;case Wu:return Math.floor((n+11)/12)*Math.floor((t+11)/12)*16;case $u:case Xu:case qu:return Math.ceil(n/4)*Math.ceil(t/4)*16;case Yu:case Zu:return Math.ceil(n/4)*Math.ceil(t/4)*8;case Za:case Ju:return Math.ceil(n/4)*Math.ceil(t/4)*16}throw new Error(`Unable to determine texture byte length for ${e} format.`)}function Mw(n){switch(n){case Rn:case Sf:return{byteLength:1,components:1};case lo:case Tf:case di:return{byteLength:2,components:1};case mu:case gu:return{byteLength:2,components:4};case hi:case pu:case jn:return{byteLength:4,components:1};case Af:case Ef:return{byteLength:4,components:3}}throw new Error(`THREE.TextureUtils: Unknown texture type ${n}.`)}typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("register",{detail:{revision:"187"}}));typeof window<"u"&&(window.__THREE__?Nt("WARNING: Multiple instances of Three.js being imported."):window.__THREE__="187");function Rv(){let n=null,t=!1,e=null,i=null;function s(r,o){i=n.requestAnimationFrame(s),e(r,o)}return{start:function(){t!==!0&&e!==null&&n!==null&&(i=n.requestAnimationFrame(s),t=!0)},stop:function(){n!==null&&n.cancelAnimationFrame(i),t=!1},setAnimationLoop:function(r){e=r},setContext:function(r){n=r}}}function Pw(n){let t=new WeakMap;function e(a,l){let u=a.array,h=a.usage,d=u.byteLength,p=n.createBuffer();n.bindBuffer(l,p),n.bufferData(l,u,h),a.onUploadCallback();let f;if(u instanceof Float32Array)f=n.FLOAT;else if(typeof Float16Array<"u"&&u instanceof Float16Array)f=n.HALF_FLOAT;else if(u instanceof Uint16Array)a.isFloat16BufferAttribute?f=n.HALF_FLOAT:f=n.UNSIGNED_SHORT;else if(u instanceof Int16Array)f=n.SHORT;else if(u instanceof Uint32Array)f=n.UNSIGNED_INT;else if(u instanceof Int32Array)f=n.INT;else if(u instanceof Int8Array)f=n.BYTE;else if(u instanceof Uint8Array)f=n.UNSIGNED_BYTE;else if(u instanceof Uint8ClampedArray)f=n.UNSIGNED_BYTE;else throw new Error("THREE.WebGLAttributes: Unsupported buffer data format: "+u);return{buffer:p,type:f,bytesPerElement:u.BYTES_PER_ELEMENT,version:a.version,size:d}}function i(a,l,u){let h=l.array,d=l.updateRanges;if(n.bindBuffer(u,a),d.length===0)n.bufferSubData(u,0,h);else{d.sort((f,g)=>f.start-g.start);let p=0;for(let f=1;f<d.length;f++){let g=d[p],_=d[f];_.start<=g.start+g.count+1?g.count=Math.max(g.count,_.start+_.count-g.start):(++p,d[p]=_)}d.length=p+1;for(let f=0,g=d.length;f<g;f++){let _=d[f];n.bufferSubData(u,_.start*h.BYTES_PER_ELEMENT,h,_.start,_.count)}l.clearUpdateRanges()}l.onUploadCallback()}function s(a){return a.isInterleavedBufferAttribute&&(a=a.data),t.get(a)}function r(a){a.isInterleavedBufferAttribute&&(a=a.data);let l=t.get(a);l&&(n.deleteBuffer(l.buffer),t.delete(a))}function o(a,l){if(a.isInterleavedBufferAttribute&&(a=a.data),a.isGLBufferAttribute){let h=t.get(a);(!h||h.version<a.version)&&t.set(a,{buffer:a.buffer,type:a.type,bytesPerElement:a.elementSize,version:a.version});return}let u=t.get(a);if(u===void 0)t.set(a,e(a,l));else if(u.version<a.version){if(u.size!==a.array.byteLength)throw new Error("THREE.WebGLAttributes: The size of the buffer attribute's array buffer does not match the original size. Resizing buffer attributes is not supported.");i(u.buffer,a,l),u.version=a.version}}return{get:s,remove:r,update:o}}var Iw=`#ifdef USE_ALPHAHASH
	if ( diffuseColor.a < getAlphaHashThreshold( vPosition ) ) discard;
#endif`,Dw=`#ifdef USE_ALPHAHASH
	const float ALPHA_HASH_SCALE = 0.05;
	float hash2D( vec2 value ) {
		return fract( 1.0e4 * sin( 17.0 * value.x + 0.1 * value.y ) * ( 0.1 + abs( sin( 13.0 * value.y + value.x ) ) ) );
	}
	float hash3D( vec3 value ) {
		return hash2D( vec2( hash2D( value.xy ), value.z ) );
	}
	float getAlphaHashThreshold( vec3 position ) {
		float maxDeriv = max(
			length( dFdx( position.xyz ) ),
			length( dFdy( position.xyz ) )
		);
		float pixScale = 1.0 / ( ALPHA_HASH_SCALE * maxDeriv );
		vec2 pixScales = vec2(
			exp2( floor( log2( pixScale ) ) ),
			exp2( ceil( log2( pixScale ) ) )
		);
		vec2 alpha = vec2(
			hash3D( floor( pixScales.x * position.xyz ) ),
			hash3D( floor( pixScales.y * position.xyz ) )
		);
		float lerpFactor = fract( log2( pixScale ) );
		float x = ( 1.0 - lerpFactor ) * alpha.x + lerpFactor * alpha.y;
		float a = min( lerpFactor, 1.0 - lerpFactor );
		vec3 cases = vec3(
			x * x / ( 2.0 * a * ( 1.0 - a ) ),
			( x - 0.5 * a ) / ( 1.0 - a ),
			1.0 - ( ( 1.0 - x ) * ( 1.0 - x ) / ( 2.0 * a * ( 1.0 - a ) ) )
		);
		float threshold = ( x < ( 1.0 - a ) )
			? ( ( x < a ) ? cases.x : cases.y )
			: cases.z;
		return clamp( threshold , 1.0e-6, 1.0 );
	}
#endif`,Lw=`#ifdef USE_ALPHAMAP
	diffuseColor.a *= texture2D( alphaMap, vAlphaMapUv ).g;
#endif`,Nw=`#ifdef USE_ALPHAMAP
	uniform sampler2D alphaMap;
#endif`,Uw=`#ifdef USE_ALPHATEST
	#ifdef ALPHA_TO_COVERAGE
	diffuseColor.a = smoothstep( alphaTest, alphaTest + fwidth( diffuseColor.a ), diffuseColor.a );
	if ( diffuseColor.a == 0.0 ) discard;
	#else
	if ( diffuseColor.a < alphaTest ) discard;
	#endif
#endif`,Ow=`#ifdef USE_ALPHATEST
	uniform float alphaTest;
#endif`,kw=`#ifdef USE_AOMAP
	float ambientOcclusion = ( texture2D( aoMap, vAoMapUv ).r - 1.0 ) * aoMapIntensity + 1.0;
	reflectedLight.indirectDiffuse *= ambientOcclusion;
	#if defined( USE_CLEARCOAT ) 
		clearcoatSpecularIndirect *= ambientOcclusion;
	#endif
	#if defined( USE_SHEEN ) 
		sheenSpecularIndirect *= ambientOcclusion;
	#endif
	#if defined( USE_ENVMAP ) && defined( STANDARD )
		float dotNV = saturate( dot( geometryNormal, geometryViewDir ) );
		reflectedLight.indirectSpecular *= computeSpecularOcclusion( dotNV, ambientOcclusion, material.roughness );
	#endif
#endif`,Fw=`#ifdef USE_AOMAP
	uniform sampler2D aoMap;
	uniform float aoMapIntensity;
#endif`,Bw=`#ifdef USE_BATCHING
	#if ! defined( GL_ANGLE_multi_draw )
	#define gl_DrawID _gl_DrawID
	uniform int _gl_DrawID;
	#endif
	uniform highp sampler2D batchingTexture;
	uniform highp usampler2D batchingIdTexture;
	mat4 getBatchingMatrix( const in float i ) {
		int size = textureSize( batchingTexture, 0 ).x;
		int j = int( i ) * 4;
		int x = j % size;
		int y = j / size;
		vec4 v1 = texelFetch( batchingTexture, ivec2( x, y ), 0 );
		vec4 v2 = texelFetch( batchingTexture, ivec2( x + 1, y ), 0 );
		vec4 v3 = texelFetch( batchingTexture, ivec2( x + 2, y ), 0 );
		vec4 v4 = texelFetch( batchingTexture, ivec2( x + 3, y ), 0 );
		return mat4( v1, v2, v3, v4 );
	}
	float getIndirectIndex( const in int i ) {
		int size = textureSize( batchingIdTexture, 0 ).x;
		int x = i % size;
		int y = i / size;
		return float( texelFetch( batchingIdTexture, ivec2( x, y ), 0 ).r );
	}
#endif
#ifdef USE_BATCHING_COLOR
	uniform sampler2D batchingColorTexture;
	vec4 getBatchingColor( const in float i ) {
		int size = textureSize( batchingColorTexture, 0 ).x;
		int j = int( i );
		int x = j % size;
		int y = j / size;
		return texelFetch( batchingColorTexture, ivec2( x, y ), 0 );
	}
#endif`,zw=`#ifdef USE_BATCHING
	mat4 batchingMatrix = getBatchingMatrix( getIndirectIndex( gl_DrawID ) );
#endif`,Vw=`vec3 transformed = vec3( position );
#ifdef USE_ALPHAHASH
	vPosition = vec3( position );
#endif`,Gw=`vec3 objectNormal = vec3( normal );
#ifdef USE_TANGENT
	vec3 objectTangent = vec3( tangent.xyz );
#endif`,Hw=`float G_BlinnPhong_Implicit( ) {
	return 0.25;
}
float D_BlinnPhong( const in float shininess, const in float dotNH ) {
	return RECIPROCAL_PI * ( shininess * 0.5 + 1.0 ) * pow( dotNH, shininess );
}
vec3 BRDF_BlinnPhong( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, const in vec3 specularColor, const in float shininess ) {
	vec3 halfDir = normalize( lightDir + viewDir );
	float dotNH = saturate( dot( normal, halfDir ) );
	float dotVH = saturate( dot( viewDir, halfDir ) );
	vec3 F = F_Schlick( specularColor, 1.0, dotVH );
	float G = G_BlinnPhong_Implicit( );
	float D = D_BlinnPhong( shininess, dotNH );
	return F * ( G * D );
} // validated`,Ww=`#ifdef USE_IRIDESCENCE
	const mat3 XYZ_TO_REC709 = mat3(
		 3.2404542, -0.9692660,  0.0556434,
		-1.5371385,  1.8760108, -0.2040259,
		-0.4985314,  0.0415560,  1.0572252
	);
	vec3 Fresnel0ToIor( vec3 fresnel0 ) {
		vec3 sqrtF0 = sqrt( fresnel0 );
		return ( vec3( 1.0 ) + sqrtF0 ) / ( vec3( 1.0 ) - sqrtF0 );
	}
	vec3 IorToFresnel0( vec3 transmittedIor, float incidentIor ) {
		return pow2( ( transmittedIor - vec3( incidentIor ) ) / ( transmittedIor + vec3( incidentIor ) ) );
	}
	float IorToFresnel0( float transmittedIor, float incidentIor ) {
		return pow2( ( transmittedIor - incidentIor ) / ( transmittedIor + incidentIor ));
	}
	vec3 evalSensitivity( float OPD, vec3 shift ) {
		float phase = 2.0 * PI * OPD * 1.0e-9;
		vec3 val = vec3( 5.4856e-13, 4.4201e-13, 5.2481e-13 );
		vec3 pos = vec3( 1.6810e+06, 1.7953e+06, 2.2084e+06 );
		vec3 var = vec3( 4.3278e+09, 9.3046e+09, 6.6121e+09 );
		vec3 xyz = val * sqrt( 2.0 * PI * var ) * cos( pos * phase + shift ) * exp( - pow2( phase ) * var );
		xyz.x += 9.7470e-14 * sqrt( 2.0 * PI * 4.5282e+09 ) * cos( 2.2399e+06 * phase + shift[ 0 ] ) * exp( - 4.5282e+09 * pow2( phase ) );
		xyz /= 1.0685e-7;
		vec3 rgb = XYZ_TO_REC709 * xyz;
		return rgb;
	}
	vec3 evalIridescence( float outsideIOR, float eta2, float cosTheta1, float thinFilmThickness, vec3 baseF0 ) {
		vec3 I;
		float iridescenceIOR = mix( outsideIOR, eta2, smoothstep( 0.0, 0.03, thinFilmThickness ) );
		float sinTheta2Sq = pow2( outsideIOR / iridescenceIOR ) * ( 1.0 - pow2( cosTheta1 ) );
		float cosTheta2Sq = 1.0 - sinTheta2Sq;
		if ( cosTheta2Sq < 0.0 ) {
			return vec3( 1.0 );
		}
		float cosTheta2 = sqrt( cosTheta2Sq );
		float R0 = IorToFresnel0( iridescenceIOR, outsideIOR );
		float R12 = F_Schlick( R0, 1.0, cosTheta1 );
		float T121 = 1.0 - R12;
		float phi12 = 0.0;
		if ( iridescenceIOR < outsideIOR ) phi12 = PI;
		float phi21 = PI - phi12;
		vec3 baseIOR = Fresnel0ToIor( clamp( baseF0, 0.0, 0.9999 ) );		vec3 R1 = IorToFresnel0( baseIOR, iridescenceIOR );
		vec3 R23 = F_Schlick( R1, 1.0, cosTheta2 );
		vec3 phi23 = vec3( 0.0 );
		if ( baseIOR[ 0 ] < iridescenceIOR ) phi23[ 0 ] = PI;
		if ( baseIOR[ 1 ] < iridescenceIOR ) phi23[ 1 ] = PI;
		if ( baseIOR[ 2 ] < iridescenceIOR ) phi23[ 2 ] = PI;
		float OPD = 2.0 * iridescenceIOR * thinFilmThickness * cosTheta2;
		vec3 phi = vec3( phi21 ) + phi23;
		vec3 R123 = clamp( R12 * R23, 1e-5, 0.9999 );
		vec3 r123 = sqrt( R123 );
		vec3 Rs = pow2( T121 ) * R23 / ( vec3( 1.0 ) - R123 );
		vec3 C0 = R12 + Rs;
		I = C0;
		vec3 Cm = Rs - T121;
		for ( int m = 1; m <= 2; ++ m ) {
			Cm *= r123;
			vec3 Sm = 2.0 * evalSensitivity( float( m ) * OPD, float( m ) * phi );
			I += Cm * Sm;
		}
		return max( I, vec3( 0.0 ) );
	}
#endif`,$w=`#ifdef USE_BUMPMAP
	uniform sampler2D bumpMap;
	uniform float bumpScale;
	vec2 dHdxy_fwd() {
		vec2 dSTdx = dFdx( vBumpMapUv );
		vec2 dSTdy = dFdy( vBumpMapUv );
		float Hll = bumpScale * texture2D( bumpMap, vBumpMapUv ).x;
		float dBx = bumpScale * texture2D( bumpMap, vBumpMapUv + dSTdx ).x - Hll;
		float dBy = bumpScale * texture2D( bumpMap, vBumpMapUv + dSTdy ).x - Hll;
		return vec2( dBx, dBy );
	}
	vec3 perturbNormalArb( vec3 surf_pos, vec3 surf_norm, vec2 dHdxy, float faceDirection ) {
		vec3 vSigmaX = normalize( dFdx( surf_pos.xyz ) );
		vec3 vSigmaY = normalize( dFdy( surf_pos.xyz ) );
		vec3 vN = surf_norm;
		vec3 R1 = cross( vSigmaY, vN );
		vec3 R2 = cross( vN, vSigmaX );
		float fDet = dot( vSigmaX, R1 ) * faceDirection;
		vec3 vGrad = sign( fDet ) * ( dHdxy.x * R1 + dHdxy.y * R2 );
		return normalize( abs( fDet ) * surf_norm - vGrad );
	}
#endif`,Xw=`#if NUM_CLIPPING_PLANES > 0
	vec4 plane;
	#ifdef ALPHA_TO_COVERAGE
		float distanceToPlane, distanceGradient;
		float clipOpacity = 1.0;
		#pragma unroll_loop_start
		for ( int i = 0; i < UNION_CLIPPING_PLANES; i ++ ) {
			plane = clippingPlanes[ i ];
			distanceToPlane = - dot( vClipPosition, plane.xyz ) + plane.w;
			distanceGradient = fwidth( distanceToPlane ) / 2.0;
			clipOpacity *= smoothstep( - distanceGradient, distanceGradient, distanceToPlane );
			if ( clipOpacity == 0.0 ) discard;
		}
		#pragma unroll_loop_end
		#if UNION_CLIPPING_PLANES < NUM_CLIPPING_PLANES
			float unionClipOpacity = 1.0;
			#pragma unroll_loop_start
			for ( int i = UNION_CLIPPING_PLANES; i < NUM_CLIPPING_PLANES; i ++ ) {
				plane = clippingPlanes[ i ];
				distanceToPlane = - dot( vClipPosition, plane.xyz ) + plane.w;
				distanceGradient = fwidth( distanceToPlane ) / 2.0;
				unionClipOpacity *= 1.0 - smoothstep( - distanceGradient, distanceGradient, distanceToPlane );
			}
			#pragma unroll_loop_end
			clipOpacity *= 1.0 - unionClipOpacity;
		#endif
		diffuseColor.a *= clipOpacity;
		if ( diffuseColor.a == 0.0 ) discard;
	#else
		#pragma unroll_loop_start
		for ( int i = 0; i < UNION_CLIPPING_PLANES; i ++ ) {
			plane = clippingPlanes[ i ];
			if ( dot( vClipPosition, plane.xyz ) > plane.w ) discard;
		}
		#pragma unroll_loop_end
		#if UNION_CLIPPING_PLANES < NUM_CLIPPING_PLANES
			bool clipped = true;
			#pragma unroll_loop_start
			for ( int i = UNION_CLIPPING_PLANES; i < NUM_CLIPPING_PLANES; i ++ ) {
				plane = clippingPlanes[ i ];
				clipped = ( dot( vClipPosition, plane.xyz ) > plane.w ) && clipped;
			}
			#pragma unroll_loop_end
			if ( clipped ) discard;
		#endif
	#endif
#endif`,qw=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
	uniform vec4 clippingPlanes[ NUM_CLIPPING_PLANES ];
#endif`,Yw=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
#endif`,Zw=`#if NUM_CLIPPING_PLANES > 0
	vClipPosition = - mvPosition.xyz;
#endif`,Jw=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA )
	diffuseColor *= vColor;
#endif`,Kw=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA )
	varying vec4 vColor;
#endif`,jw=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA ) || defined( USE_INSTANCING_COLOR ) || defined( USE_BATCHING_COLOR )
	varying vec4 vColor;
#endif`,Qw=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA ) || defined( USE_INSTANCING_COLOR ) || defined( USE_BATCHING_COLOR )
	vColor = vec4( 1.0 );
#endif
#ifdef USE_COLOR_ALPHA
	vColor *= color;
#elif defined( USE_COLOR )
	vColor.rgb *= color;
#endif
#ifdef USE_INSTANCING_COLOR
	vColor.rgb *= instanceColor.rgb;
#endif
#ifdef USE_BATCHING_COLOR
	vColor *= getBatchingColor( getIndirectIndex( gl_DrawID ) );
#endif`,tM=`#define PI 3.141592653589793
#define PI2 6.283185307179586
#define PI_HALF 1.5707963267948966
#define RECIPROCAL_PI 0.3183098861837907
#define RECIPROCAL_PI2 0.15915494309189535
#define EPSILON 1e-6
#ifndef saturate
#define saturate( a ) clamp( a, 0.0, 1.0 )
#endif
#define whiteComplement( a ) ( 1.0 - saturate( a ) )
float pow2( const in float x ) { return x*x; }
vec3 pow2( const in vec3 x ) { return x*x; }
float pow3( const in float x ) { return x*x*x; }
float pow4( const in float x ) { float x2 = x*x; return x2*x2; }
float max3( const in vec3 v ) { return max( max( v.x, v.y ), v.z ); }
float average( const in vec3 v ) { return dot( v, vec3( 0.3333333 ) ); }
highp float rand( const in vec2 uv ) {
	const highp float a = 12.9898, b = 78.233, c = 43758.5453;
	highp float dt = dot( uv.xy, vec2( a,b ) ), sn = mod( dt, PI );
	return fract( sin( sn ) * c );
}
#ifdef HIGH_PRECISION
	float precisionSafeLength( vec3 v ) { return length( v ); }
#else
	float precisionSafeLength( vec3 v ) {
		float maxComponent = max3( abs( v ) );
		return length( v / maxComponent ) * maxComponent;
	}
#endif
struct IncidentLight {
	vec3 color;
	vec3 direction;
	bool visible;
};
struct ReflectedLight {
	vec3 directDiffuse;
	vec3 directSpecular;
	vec3 indirectDiffuse;
	vec3 indirectSpecular;
};
#ifdef USE_ALPHAHASH
	varying vec3 vPosition;
#endif
vec3 transformDirection( in vec3 dir, in mat4 matrix ) {
	return normalize( ( matrix * vec4( dir, 0.0 ) ).xyz );
}
#define inverseTransformDirection transformDirectionByInverseViewMatrix
vec3 transformNormalByInverseViewMatrix( in vec3 normal, in mat4 viewMatrix ) {
	return normalize( ( vec4( normal, 0.0 ) * viewMatrix ).xyz );
}
vec3 transformDirectionByInverseViewMatrix( in vec3 dir, in mat4 viewMatrix ) {
	return normalize( ( vec4( dir, 0.0 ) * viewMatrix ).xyz );
}
bool isPerspectiveMatrix( mat4 m ) {
	return m[ 2 ][ 3 ] == - 1.0;
}
vec2 equirectUv( in vec3 dir ) {
	float u = atan( dir.z, dir.x ) * RECIPROCAL_PI2 + 0.5;
	float v = asin( clamp( dir.y, - 1.0, 1.0 ) ) * RECIPROCAL_PI + 0.5;
	return vec2( u, v );
}
vec3 BRDF_Lambert( const in vec3 diffuseColor ) {
	return RECIPROCAL_PI * diffuseColor;
}
vec3 F_Schlick( const in vec3 f0, const in float f90, const in float dotVH ) {
	float fresnel = exp2( ( - 5.55473 * dotVH - 6.98316 ) * dotVH );
	return f0 * ( 1.0 - fresnel ) + ( f90 * fresnel );
}
float F_Schlick( const in float f0, const in float f90, const in float dotVH ) {
	float fresnel = exp2( ( - 5.55473 * dotVH - 6.98316 ) * dotVH );
	return f0 * ( 1.0 - fresnel ) + ( f90 * fresnel );
} // validated`,eM=`vec3 transformedNormal = objectNormal;
#ifdef USE_TANGENT
	vec3 transformedTangent = objectTangent;
#endif
#ifdef USE_BATCHING
	mat3 bm = mat3( batchingMatrix );
	transformedNormal /= vec3( dot( bm[ 0 ], bm[ 0 ] ), dot( bm[ 1 ], bm[ 1 ] ), dot( bm[ 2 ], bm[ 2 ] ) );
	transformedNormal = bm * transformedNormal;
	#ifdef USE_TANGENT
		transformedTangent = bm * transformedTangent;
	#endif
#endif
#ifdef USE_INSTANCING
	mat3 im = mat3( instanceMatrix );
	transformedNormal /= vec3( dot( im[ 0 ], im[ 0 ] ), dot( im[ 1 ], im[ 1 ] ), dot( im[ 2 ], im[ 2 ] ) );
	transformedNormal = im * transformedNormal;
	#ifdef USE_TANGENT
		transformedTangent = im * transformedTangent;
	#endif
#endif
transformedNormal = normalMatrix * transformedNormal;
#ifdef FLIP_SIDED
	transformedNormal = - transformedNormal;
#endif
#ifdef USE_TANGENT
	transformedTangent = ( modelViewMatrix * vec4( transformedTangent, 0.0 ) ).xyz;
#endif`,nM=`#ifdef USE_DISPLACEMENTMAP
	uniform sampler2D displacementMap;
	uniform float displacementScale;
	uniform float displacementBias;
#endif`,iM=`#ifdef USE_DISPLACEMENTMAP
	transformed += normalize( objectNormal ) * ( texture2D( displacementMap, vDisplacementMapUv ).x * displacementScale + displacementBias );
#endif`,sM=`#ifdef USE_EMISSIVEMAP
	vec4 emissiveColor = texture2D( emissiveMap, vEmissiveMapUv );
	#ifdef DECODE_VIDEO_TEXTURE_EMISSIVE
		emissiveColor = sRGBTransferEOTF( emissiveColor );
	#endif
	totalEmissiveRadiance *= emissiveColor.rgb;
#endif`,rM=`#ifdef USE_EMISSIVEMAP
	uniform sampler2D emissiveMap;
#endif`,oM="gl_FragColor = linearToOutputTexel( gl_FragColor );",aM=`vec4 LinearTransferOETF( in vec4 value ) {
	return value;
}
vec4 sRGBTransferEOTF( in vec4 value ) {
	return vec4( mix( pow( value.rgb * 0.9478672986 + vec3( 0.0521327014 ), vec3( 2.4 ) ), value.rgb * 0.0773993808, vec3( lessThanEqual( value.rgb, vec3( 0.04045 ) ) ) ), value.a );
}
vec4 sRGBTransferOETF( in vec4 value ) {
	return vec4( mix( pow( value.rgb, vec3( 0.41666 ) ) * 1.055 - vec3( 0.055 ), value.rgb * 12.92, vec3( lessThanEqual( value.rgb, vec3( 0.0031308 ) ) ) ), value.a );
}`,lM=`#ifdef USE_ENVMAP
	#ifdef ENV_WORLDPOS
		vec3 cameraToFrag;
		if ( isOrthographic ) {
			cameraToFrag = normalize( vec3( - viewMatrix[ 0 ][ 2 ], - viewMatrix[ 1 ][ 2 ], - viewMatrix[ 2 ][ 2 ] ) );
		} else {
			cameraToFrag = normalize( vWorldPosition - cameraPosition );
		}
		vec3 worldNormal = transformNormalByInverseViewMatrix( normal, viewMatrix );
		#ifdef ENVMAP_MODE_REFLECTION
			vec3 reflectVec = reflect( cameraToFrag, worldNormal );
		#else
			vec3 reflectVec = refract( cameraToFrag, worldNormal, refractionRatio );
		#endif
	#else
		vec3 reflectVec = vReflect;
	#endif
	#ifdef ENVMAP_TYPE_CUBE
		vec4 envColor = textureCube( envMap, envMapRotation * reflectVec );
		#ifdef ENVMAP_BLENDING_MULTIPLY
			outgoingLight = mix( outgoingLight, outgoingLight * envColor.xyz, specularStrength * reflectivity );
		#elif defined( ENVMAP_BLENDING_MIX )
			outgoingLight = mix( outgoingLight, envColor.xyz, specularStrength * reflectivity );
		#elif defined( ENVMAP_BLENDING_ADD )
			outgoingLight += envColor.xyz * specularStrength * reflectivity;
		#endif
	#endif
#endif`,cM=`#ifdef USE_ENVMAP
	uniform float envMapIntensity;
	uniform mat3 envMapRotation;
	uniform samplerCube envMap;
	#ifdef ENVMAP_TYPE_PMREM
		float roughnessToMip( const in float roughness ) {
			float r = clamp( roughness, 0.0, 1.0 );
			return ENVMAP_MAX_LOD * r * ( 2.0 - r );
		}
	#endif
#endif`,uM=`#ifdef USE_ENVMAP
	uniform float reflectivity;
	#if defined( USE_BUMPMAP ) || defined( USE_NORMALMAP ) || defined( PHONG ) || defined( LAMBERT )
		#define ENV_WORLDPOS
	#endif
	#ifdef ENV_WORLDPOS
		varying vec3 vWorldPosition;
		uniform float refractionRatio;
	#else
		varying vec3 vReflect;
	#endif
#endif`,hM=`#ifdef USE_ENVMAP
	#if defined( USE_BUMPMAP ) || defined( USE_NORMALMAP ) || defined( PHONG ) || defined( LAMBERT )
		#define ENV_WORLDPOS
	#endif
	#ifdef ENV_WORLDPOS
		
		varying vec3 vWorldPosition;
	#else
		varying vec3 vReflect;
		uniform float refractionRatio;
	#endif
#endif`,dM=`#ifdef USE_ENVMAP
	#ifdef ENV_WORLDPOS
		vWorldPosition = worldPosition.xyz;
	#else
		vec3 cameraToVertex;
		if ( isOrthographic ) {
			cameraToVertex = normalize( vec3( - viewMatrix[ 0 ][ 2 ], - viewMatrix[ 1 ][ 2 ], - viewMatrix[ 2 ][ 2 ] ) );
		} else {
			cameraToVertex = normalize( worldPosition.xyz - cameraPosition );
		}
		vec3 worldNormal = transformNormalByInverseViewMatrix( transformedNormal, viewMatrix );
		#ifdef ENVMAP_MODE_REFLECTION
			vReflect = reflect( cameraToVertex, worldNormal );
		#else
			vReflect = refract( cameraToVertex, worldNormal, refractionRatio );
		#endif
	#endif
#endif`,fM=`#ifdef USE_FOG
	vFogDepth = - mvPosition.z;
#endif`,pM=`#ifdef USE_FOG
	varying float vFogDepth;
#endif`,mM=`#ifdef USE_FOG
	#ifdef FOG_EXP2
		float fogFactor = 1.0 - exp( - fogDensity * fogDensity * vFogDepth * vFogDepth );
	#else
		float fogFactor = smoothstep( fogNear, fogFar, vFogDepth );
	#endif
	gl_FragColor.rgb = mix( gl_FragColor.rgb, fogColor, fogFactor );
#endif`,gM=`#ifdef USE_FOG
	uniform vec3 fogColor;
	varying float vFogDepth;
	#ifdef FOG_EXP2
		uniform float fogDensity;
	#else
		uniform float fogNear;
		uniform float fogFar;
	#endif
#endif`,vM=`#ifdef USE_GRADIENTMAP
	uniform sampler2D gradientMap;
#endif
vec3 getGradientIrradiance( vec3 normal, vec3 lightDirection ) {
	float dotNL = dot( normal, lightDirection );
	vec2 coord = vec2( dotNL * 0.5 + 0.5, 0.0 );
	#ifdef USE_GRADIENTMAP
		return vec3( texture2D( gradientMap, coord ).r );
	#else
		vec2 fw = fwidth( coord ) * 0.5;
		return mix( vec3( 0.7 ), vec3( 1.0 ), smoothstep( 0.7 - fw.x, 0.7 + fw.x, coord.x ) );
	#endif
}`,_M=`#ifdef USE_LIGHTMAP
	uniform sampler2D lightMap;
	uniform float lightMapIntensity;
#endif`,yM=`LambertMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularStrength = specularStrength;`,xM=`varying vec3 vViewPosition;
struct LambertMaterial {
	vec3 diffuseColor;
	float specularStrength;
};
void RE_Direct_Lambert( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in LambertMaterial material, inout ReflectedLight reflectedLight ) {
	float dotNL = saturate( dot( geometryNormal, directLight.direction ) );
	vec3 irradiance = dotNL * directLight.color;
	reflectedLight.directDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
void RE_IndirectDiffuse_Lambert( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in LambertMaterial material, inout ReflectedLight reflectedLight ) {
	reflectedLight.indirectDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
#define RE_Direct				RE_Direct_Lambert
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Lambert`,bM=`uniform bool receiveShadow;
uniform vec3 ambientLightColor;
#if defined( USE_LIGHT_PROBES )
	uniform vec3 lightProbe[ 9 ];
#endif
vec3 shGetIrradianceAt( in vec3 normal, in vec3 shCoefficients[ 9 ] ) {
	float x = normal.x, y = normal.y, z = normal.z;
	vec3 result = shCoefficients[ 0 ] * 0.886227;
	result += shCoefficients[ 1 ] * 2.0 * 0.511664 * y;
	result += shCoefficients[ 2 ] * 2.0 * 0.511664 * z;
	result += shCoefficients[ 3 ] * 2.0 * 0.511664 * x;
	result += shCoefficients[ 4 ] * 2.0 * 0.429043 * x * y;
	result += shCoefficients[ 5 ] * 2.0 * 0.429043 * y * z;
	result += shCoefficients[ 6 ] * ( 0.743125 * z * z - 0.247708 );
	result += shCoefficients[ 7 ] * 2.0 * 0.429043 * x * z;
	result += shCoefficients[ 8 ] * 0.429043 * ( x * x - y * y );
	return result;
}
vec3 getLightProbeIrradiance( const in vec3 lightProbe[ 9 ], const in vec3 normal ) {
	vec3 worldNormal = transformNormalByInverseViewMatrix( normal, viewMatrix );
	vec3 irradiance = shGetIrradianceAt( worldNormal, lightProbe );
	return irradiance;
}
vec3 getAmbientLightIrradiance( const in vec3 ambientLightColor ) {
	vec3 irradiance = ambientLightColor;
	return irradiance;
}
float getDistanceAttenuation( const in float lightDistance, const in float cutoffDistance, const in float decayExponent ) {
	float distanceFalloff = 1.0 / max( pow( lightDistance, decayExponent ), 0.01 );
	if ( cutoffDistance > 0.0 ) {
		distanceFalloff *= pow2( saturate( 1.0 - pow4( lightDistance / cutoffDistance ) ) );
	}
	return distanceFalloff;
}
float getSpotAttenuation( const in float coneCosine, const in float penumbraCosine, const in float angleCosine ) {
	return smoothstep( coneCosine, penumbraCosine, angleCosine );
}
#if NUM_SUN_LIGHTS > 0
	struct SunLight {
		vec3 direction;
		vec3 color;
	};
	uniform SunLight sunLights[ NUM_SUN_LIGHTS ];
	void getSunLightInfo( const in SunLight sunLight, out IncidentLight light ) {
		light.color = sunLight.color;
		light.direction = sunLight.direction;
		light.visible = true;
	}
#endif
#if NUM_DIR_LIGHTS > 0
	struct DirectionalLight {
		vec3 direction;
		vec3 color;
	};
	uniform DirectionalLight directionalLights[ NUM_DIR_LIGHTS ];
	void getDirectionalLightInfo( const in DirectionalLight directionalLight, out IncidentLight light ) {
		light.color = directionalLight.color;
		light.direction = directionalLight.direction;
		light.visible = true;
	}
#endif
#if NUM_POINT_LIGHTS > 0
	struct PointLight {
		vec3 position;
		vec3 color;
		float distance;
		float decay;
	};
	uniform PointLight pointLights[ NUM_POINT_LIGHTS ];
	void getPointLightInfo( const in PointLight pointLight, const in vec3 geometryPosition, out IncidentLight light ) {
		vec3 lVector = pointLight.position - geometryPosition;
		light.direction = normalize( lVector );
		float lightDistance = length( lVector );
		light.color = pointLight.color;
		light.color *= getDistanceAttenuation( lightDistance, pointLight.distance, pointLight.decay );
		light.visible = ( light.color != vec3( 0.0 ) );
	}
#endif
#if NUM_SPOT_LIGHTS > 0
	struct SpotLight {
		vec3 position;
		vec3 direction;
		vec3 color;
		float distance;
		float decay;
		float coneCos;
		float penumbraCos;
	};
	uniform SpotLight spotLights[ NUM_SPOT_LIGHTS ];
	void getSpotLightInfo( const in SpotLight spotLight, const in vec3 geometryPosition, out IncidentLight light ) {
		vec3 lVector = spotLight.position - geometryPosition;
		light.direction = normalize( lVector );
		float angleCos = dot( light.direction, spotLight.direction );
		float spotAttenuation = getSpotAttenuation( spotLight.coneCos, spotLight.penumbraCos, angleCos );
		if ( spotAttenuation > 0.0 ) {
			float lightDistance = length( lVector );
			light.color = spotLight.color * spotAttenuation;
			light.color *= getDistanceAttenuation( lightDistance, spotLight.distance, spotLight.decay );
			light.visible = ( light.color != vec3( 0.0 ) );
		} else {
			light.color = vec3( 0.0 );
			light.visible = false;
		}
	}
#endif
#if NUM_RECT_AREA_LIGHTS > 0
	struct RectAreaLight {
		vec3 color;
		vec3 position;
		vec3 halfWidth;
		vec3 halfHeight;
	};
	uniform sampler2D ltc_1;	uniform sampler2D ltc_2;
	uniform RectAreaLight rectAreaLights[ NUM_RECT_AREA_LIGHTS ];
#endif
#if NUM_HEMI_LIGHTS > 0
	struct HemisphereLight {
		vec3 direction;
		vec3 skyColor;
		vec3 groundColor;
	};
	uniform HemisphereLight hemisphereLights[ NUM_HEMI_LIGHTS ];
	vec3 getHemisphereLightIrradiance( const in HemisphereLight hemiLight, const in vec3 normal ) {
		float dotNL = dot( normal, hemiLight.direction );
		float hemiDiffuseWeight = 0.5 * dotNL + 0.5;
		vec3 irradiance = mix( hemiLight.groundColor, hemiLight.skyColor, hemiDiffuseWeight );
		return irradiance;
	}
#endif
#include <lightprobes_pars_fragment>`,wM=`#ifdef USE_ENVMAP
	vec3 getIBLIrradiance( const in vec3 normal ) {
		#ifdef ENVMAP_TYPE_PMREM
			vec3 worldNormal = transformNormalByInverseViewMatrix( normal, viewMatrix );
			vec4 envMapColor = textureLod( envMap, envMapRotation * worldNormal, ENVMAP_MAX_LOD );
			return PI * envMapColor.rgb * envMapIntensity;
		#else
			return vec3( 0.0 );
		#endif
	}
	vec3 getIBLRadiance( const in vec3 viewDir, const in vec3 normal, const in float roughness ) {
		#ifdef ENVMAP_TYPE_PMREM
			vec3 reflectVec = reflect( - viewDir, normal );
			reflectVec = normalize( mix( reflectVec, normal, pow4( roughness ) ) );
			reflectVec = transformDirectionByInverseViewMatrix( reflectVec, viewMatrix );
			vec4 envMapColor = textureLod( envMap, envMapRotation * reflectVec, roughnessToMip( roughness ) );
			return envMapColor.rgb * envMapIntensity;
		#else
			return vec3( 0.0 );
		#endif
	}
	#ifdef USE_RETROREFLECTION
		vec3 getIBLRetroRadiance( const in vec3 viewDir, const in vec3 normal, const in float roughness ) {
			#ifdef ENVMAP_TYPE_PMREM
				vec3 retroVec = normalize( mix( viewDir, normal, pow4( roughness ) ) );
				retroVec = transformDirectionByInverseViewMatrix( retroVec, viewMatrix );
				vec4 envMapColor = textureLod( envMap, envMapRotation * retroVec, roughnessToMip( roughness ) );
				return envMapColor.rgb * envMapIntensity;
			#else
				return vec3( 0.0 );
			#endif
		}
	#endif
	#ifdef USE_ANISOTROPY
		vec3 getIBLAnisotropyRadiance( const in vec3 viewDir, const in vec3 normal, const in float roughness, const in vec3 bitangent, const in float anisotropy ) {
			#ifdef ENVMAP_TYPE_PMREM
				vec3 bentNormal = cross( bitangent, viewDir );
				bentNormal = normalize( cross( bentNormal, bitangent ) );
				bentNormal = normalize( mix( bentNormal, normal, pow2( pow2( 1.0 - anisotropy * ( 1.0 - roughness ) ) ) ) );
				return getIBLRadiance( viewDir, bentNormal, roughness );
			#else
				return vec3( 0.0 );
			#endif
		}
		#ifdef USE_RETROREFLECTION
			vec3 getIBLAnisotropyRetroRadiance( const in vec3 viewDir, const in vec3 normal, const in float roughness, const in vec3 bitangent, const in float anisotropy ) {
				#ifdef ENVMAP_TYPE_PMREM
					vec3 bentNormal = cross( bitangent, viewDir );
					bentNormal = normalize( cross( bentNormal, bitangent ) );
					bentNormal = normalize( mix( bentNormal, normal, pow2( pow2( 1.0 - anisotropy * ( 1.0 - roughness ) ) ) ) );
					return getIBLRetroRadiance( viewDir, bentNormal, roughness );
				#else
					return vec3( 0.0 );
				#endif
			}
		#endif
	#endif
#endif`,MM=`ToonMaterial material;
material.diffuseColor = diffuseColor.rgb;`,SM=`varying vec3 vViewPosition;
struct ToonMaterial {
	vec3 diffuseColor;
};
void RE_Direct_Toon( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in ToonMaterial material, inout ReflectedLight reflectedLight ) {
	vec3 irradiance = getGradientIrradiance( geometryNormal, directLight.direction ) * directLight.color;
	reflectedLight.directDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
void RE_IndirectDiffuse_Toon( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in ToonMaterial material, inout ReflectedLight reflectedLight ) {
	reflectedLight.indirectDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
#define RE_Direct				RE_Direct_Toon
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Toon`,TM=`BlinnPhongMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularColor = specular;
material.specularShininess = shininess;
material.specularStrength = specularStrength;`,AM=`varying vec3 vViewPosition;
struct BlinnPhongMaterial {
	vec3 diffuseColor;
	vec3 specularColor;
	float specularShininess;
	float specularStrength;
};
void RE_Direct_BlinnPhong( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in BlinnPhongMaterial material, inout ReflectedLight reflectedLight ) {
	float dotNL = saturate( dot( geometryNormal, directLight.direction ) );
	vec3 irradiance = dotNL * directLight.color;
	reflectedLight.directDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
	reflectedLight.directSpecular += irradiance * BRDF_BlinnPhong( directLight.direction, geometryViewDir, geometryNormal, material.specularColor, material.specularShininess ) * material.specularStrength;
}
void RE_IndirectDiffuse_BlinnPhong( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in BlinnPhongMaterial material, inout ReflectedLight reflectedLight ) {
	reflectedLight.indirectDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
#define RE_Direct				RE_Direct_BlinnPhong
#define RE_IndirectDiffuse		RE_IndirectDiffuse_BlinnPhong`,EM=`PhysicalMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.diffuseContribution = diffuseColor.rgb * ( 1.0 - metalnessFactor );
material.metalness = metalnessFactor;
vec3 dxy = max( abs( dFdx( nonPerturbedNormal ) ), abs( dFdy( nonPerturbedNormal ) ) );
float geometryRoughness = max( max( dxy.x, dxy.y ), dxy.z );
material.roughness = max( roughnessFactor, 0.045 );
material.roughness += geometryRoughness;
material.roughness = min( material.roughness, 1.0 );
#ifdef USE_DIFFUSE_ROUGHNESS
	float diffuseRoughnessFactor = diffuseRoughness;
	#ifdef USE_DIFFUSE_ROUGHNESSMAP
		diffuseRoughnessFactor *= texture2D( diffuseRoughnessMap, vDiffuseRoughnessMapUv ).r;
	#endif
	material.diffuseRoughness = saturate( diffuseRoughnessFactor );
#endif
#ifdef IOR
	material.ior = ior;
	#ifdef USE_SPECULAR
		float specularIntensityFactor = specularIntensity;
		vec3 specularColorFactor = specularColor;
		#ifdef USE_SPECULAR_COLORMAP
			specularColorFactor *= texture2D( specularColorMap, vSpecularColorMapUv ).rgb;
		#endif
		#ifdef USE_SPECULAR_INTENSITYMAP
			specularIntensityFactor *= texture2D( specularIntensityMap, vSpecularIntensityMapUv ).a;
		#endif
		material.specularF90 = mix( specularIntensityFactor, 1.0, metalnessFactor );
	#else
		float specularIntensityFactor = 1.0;
		vec3 specularColorFactor = vec3( 1.0 );
		material.specularF90 = 1.0;
	#endif
	material.specularColor = min( pow2( ( material.ior - 1.0 ) / ( material.ior + 1.0 ) ) * specularColorFactor, vec3( 1.0 ) ) * specularIntensityFactor;
	material.specularColorBlended = mix( material.specularColor, diffuseColor.rgb, metalnessFactor );
#else
	material.specularColor = vec3( 0.04 );
	material.specularColorBlended = mix( material.specularColor, diffuseColor.rgb, metalnessFactor );
	material.specularF90 = 1.0;
#endif
#ifdef USE_CLEARCOAT
	material.clearcoat = clearcoat;
	material.clearcoatRoughness = clearcoatRoughness;
	material.clearcoatF0 = vec3( 0.04 );
	material.clearcoatF90 = 1.0;
	#ifdef USE_CLEARCOATMAP
		material.clearcoat *= texture2D( clearcoatMap, vClearcoatMapUv ).x;
	#endif
	#ifdef USE_CLEARCOAT_ROUGHNESSMAP
		material.clearcoatRoughness *= texture2D( clearcoatRoughnessMap, vClearcoatRoughnessMapUv ).y;
	#endif
	material.clearcoat = saturate( material.clearcoat );	material.clearcoatRoughness = max( material.clearcoatRoughness, 0.045 );
	material.clearcoatRoughness += geometryRoughness;
	material.clearcoatRoughness = min( material.clearcoatRoughness, 1.0 );
#endif
#ifdef USE_DISPERSION
	material.dispersion = dispersion;
#endif
#ifdef USE_RETROREFLECTION
	material.retroreflectivity = retroreflectivity;
#endif
#ifdef USE_IRIDESCENCE
	material.iridescence = iridescence;
	material.iridescenceIOR = iridescenceIOR;
	#ifdef USE_IRIDESCENCEMAP
		material.iridescence *= texture2D( iridescenceMap, vIridescenceMapUv ).r;
	#endif
	#ifdef USE_IRIDESCENCE_THICKNESSMAP
		material.iridescenceThickness = (iridescenceThicknessMaximum - iridescenceThicknessMinimum) * texture2D( iridescenceThicknessMap, vIridescenceThicknessMapUv ).g + iridescenceThicknessMinimum;
	#else
		material.iridescenceThickness = iridescenceThicknessMaximum;
	#endif
#endif
#ifdef USE_SHEEN
	material.sheenColor = sheenColor;
	#ifdef USE_SHEEN_COLORMAP
		material.sheenColor *= texture2D( sheenColorMap, vSheenColorMapUv ).rgb;
	#endif
	material.sheenRoughness = clamp( sheenRoughness, 0.0001, 1.0 );
	#ifdef USE_SHEEN_ROUGHNESSMAP
		material.sheenRoughness *= texture2D( sheenRoughnessMap, vSheenRoughnessMapUv ).a;
	#endif
#endif
#ifdef USE_ANISOTROPY
	#ifdef USE_ANISOTROPYMAP
		mat2 anisotropyMat = mat2( anisotropyVector.x, anisotropyVector.y, - anisotropyVector.y, anisotropyVector.x );
		vec3 anisotropyPolar = texture2D( anisotropyMap, vAnisotropyMapUv ).rgb;
		vec2 anisotropyV = anisotropyMat * normalize( 2.0 * anisotropyPolar.rg - vec2( 1.0 ) ) * anisotropyPolar.b;
	#else
		vec2 anisotropyV = anisotropyVector;
	#endif
	material.anisotropy = length( anisotropyV );
	if( material.anisotropy == 0.0 ) {
		anisotropyV = vec2( 1.0, 0.0 );
	} else {
		anisotropyV /= material.anisotropy;
		material.anisotropy = saturate( material.anisotropy );
	}
	material.alphaT = mix( pow2( material.roughness ), 1.0, pow2( material.anisotropy ) );
	material.anisotropyT = tbn[ 0 ] * anisotropyV.x + tbn[ 1 ] * anisotropyV.y;
	material.anisotropyB = tbn[ 1 ] * anisotropyV.x - tbn[ 0 ] * anisotropyV.y;
#endif`,CM=`uniform sampler2D dfgLUT;
struct PhysicalMaterial {
	vec3 diffuseColor;
	vec3 diffuseContribution;
	vec3 specularColor;
	vec3 specularColorBlended;
	float roughness;
	float metalness;
	float specularF90;
	float dispersion;
	vec2 dfg;
	vec3 multiScatteringCompensation;
	#ifdef USE_DIFFUSE_ROUGHNESS
		float diffuseRoughness;
	#endif
	#ifdef USE_RETROREFLECTION
		float retroreflectivity;
	#endif
	#ifdef USE_CLEARCOAT
		float clearcoat;
		float clearcoatRoughness;
		vec3 clearcoatF0;
		float clearcoatF90;
	#endif
	#ifdef USE_IRIDESCENCE
		float iridescence;
		float iridescenceIOR;
		float iridescenceThickness;
		vec3 iridescenceFresnel;
		vec3 iridescenceF0Dielectric;
		vec3 iridescenceF0Metallic;
	#endif
	#ifdef USE_SHEEN
		vec3 sheenColor;
		float sheenRoughness;
	#endif
	#ifdef IOR
		float ior;
	#endif
	#ifdef USE_TRANSMISSION
		float transmission;
		float transmissionAlpha;
		float thickness;
		float attenuationDistance;
		vec3 attenuationColor;
	#endif
	#ifdef USE_ANISOTROPY
		float anisotropy;
		float alphaT;
		vec3 anisotropyT;
		vec3 anisotropyB;
	#endif
};
vec3 clearcoatSpecularDirect = vec3( 0.0 );
vec3 clearcoatSpecularIndirect = vec3( 0.0 );
vec3 sheenSpecularDirect = vec3( 0.0 );
vec3 sheenSpecularIndirect = vec3(0.0 );
vec3 Schlick_to_F0( const in vec3 f, const in float f90, const in float dotVH ) {
    float x = clamp( 1.0 - dotVH, 0.0, 1.0 );
    float x2 = x * x;
    float x5 = clamp( x * x2 * x2, 0.0, 0.9999 );
    return ( f - vec3( f90 ) * x5 ) / ( 1.0 - x5 );
}
#ifdef USE_DIFFUSE_ROUGHNESS
	const float EON_EPSILON = 1e-7;
	float FON_DirectionalAlbedo( const in float mu, const in float roughness, const in float A ) {
		float muComp = 1.0 - mu;
		float gOverPi = muComp * ( 0.0571085289 + muComp * ( 0.491881867 + muComp * ( - 0.332181442 + muComp * 0.0714429953 ) ) );
		return A * ( 1.0 + roughness * gOverPi );
	}
	vec3 BRDF_EON( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, const in vec3 diffuseColor, const in float roughness ) {
		vec3 rho = saturate( diffuseColor );
		if ( roughness <= EON_EPSILON ) return BRDF_Lambert( rho );
		float dotNL = saturate( dot( normal, lightDir ) );
		float dotNV = saturate( dot( normal, viewDir ) );
		float s = dot( lightDir, viewDir ) - dotNL * dotNV;
		float sOverT = ( s > 0.0 ) ? s / max( max( dotNL, dotNV ), EON_EPSILON ) : s;
		float A = 1.0 / ( 1.0 + ( 0.5 - 2.0 / ( 3.0 * PI ) ) * roughness );
		vec3 singleScatter = rho * RECIPROCAL_PI * A * ( 1.0 + roughness * sOverT );
		float averageAlbedo = A * ( 1.0 + ( 2.0 / 3.0 - 28.0 / ( 15.0 * PI ) ) * roughness );
		float albedoV = FON_DirectionalAlbedo( dotNV, roughness, A );
		float albedoL = FON_DirectionalAlbedo( dotNL, roughness, A );
		vec3 rhoMultiScatter = rho * rho * averageAlbedo / max( vec3( EON_EPSILON ), vec3( 1.0 ) - rho * ( 1.0 - averageAlbedo ) );
		vec3 multiScatter = rhoMultiScatter * RECIPROCAL_PI
			* max( EON_EPSILON, 1.0 - albedoV )
			* max( EON_EPSILON, 1.0 - albedoL )
			/ max( EON_EPSILON, 1.0 - averageAlbedo );
		return singleScatter + multiScatter;
	}
	vec3 EON_DirectionalAlbedo( const in vec3 diffuseColor, const in float roughness, const in float dotNV ) {
		vec3 rho = saturate( diffuseColor );
		if ( roughness <= EON_EPSILON ) return rho;
		float A = 1.0 / ( 1.0 + ( 0.5 - 2.0 / ( 3.0 * PI ) ) * roughness );
		float directionalAlbedo = FON_DirectionalAlbedo( dotNV, roughness, A );
		float averageAlbedo = A * ( 1.0 + ( 2.0 / 3.0 - 28.0 / ( 15.0 * PI ) ) * roughness );
		vec3 rhoMultiScatter = rho * rho * averageAlbedo / max( vec3( EON_EPSILON ), vec3( 1.0 ) - rho * ( 1.0 - averageAlbedo ) );
		return rho * directionalAlbedo + rhoMultiScatter * ( 1.0 - directionalAlbedo );
	}
#endif
float V_GGX_SmithCorrelated( const in float alpha, const in float dotNL, const in float dotNV ) {
	float a2 = pow2( alpha );
	float gv = dotNL * sqrt( a2 + ( 1.0 - a2 ) * pow2( dotNV ) );
	float gl = dotNV * sqrt( a2 + ( 1.0 - a2 ) * pow2( dotNL ) );
	return 0.5 / max( gv + gl, EPSILON );
}
float D_GGX( const in float alpha, const in float dotNH ) {
	float a2 = pow2( alpha );
	float denom = pow2( dotNH ) * ( a2 - 1.0 ) + 1.0;
	return RECIPROCAL_PI * a2 / pow2( denom );
}
#ifdef USE_ANISOTROPY
	float V_GGX_SmithCorrelated_Anisotropic( const in float alphaT, const in float alphaB, const in float dotTV, const in float dotBV, const in float dotTL, const in float dotBL, const in float dotNV, const in float dotNL ) {
		float gv = dotNL * length( vec3( alphaT * dotTV, alphaB * dotBV, dotNV ) );
		float gl = dotNV * length( vec3( alphaT * dotTL, alphaB * dotBL, dotNL ) );
		return 0.5 / max( gv + gl, EPSILON );
	}
	float D_GGX_Anisotropic( const in float alphaT, const in float alphaB, const in float dotNH, const in float dotTH, const in float dotBH ) {
		float a2 = alphaT * alphaB;
		highp vec3 v = vec3( alphaB * dotTH, alphaT * dotBH, a2 * dotNH );
		highp float v2 = dot( v, v );
		float w2 = a2 / v2;
		return RECIPROCAL_PI * a2 * pow2 ( w2 );
	}
#endif
#ifdef USE_CLEARCOAT
	vec3 BRDF_GGX_Clearcoat( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, const in PhysicalMaterial material) {
		vec3 f0 = material.clearcoatF0;
		float f90 = material.clearcoatF90;
		float roughness = max( material.clearcoatRoughness, 0.045 );
		float alpha = pow2( roughness );
		vec3 halfDir = normalize( lightDir + viewDir );
		float dotNL = saturate( dot( normal, lightDir ) );
		float dotNV = saturate( dot( normal, viewDir ) );
		float dotNH = saturate( dot( normal, halfDir ) );
		float dotVH = saturate( dot( viewDir, halfDir ) );
		vec3 F = F_Schlick( f0, f90, dotVH );
		float V = V_GGX_SmithCorrelated( alpha, dotNL, dotNV );
		float D = D_GGX( alpha, dotNH );
		return F * ( V * D );
	}
#endif
vec3 BRDF_GGX( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, const in PhysicalMaterial material ) {
	vec3 f0 = material.specularColorBlended;
	float f90 = material.specularF90;
	float roughness = max( material.roughness, 0.045 );
	float alpha = pow2( roughness );
	vec3 halfDir = normalize( lightDir + viewDir );
	float dotNL = saturate( dot( normal, lightDir ) );
	float dotNV = saturate( dot( normal, viewDir ) );
	float dotNH = saturate( dot( normal, halfDir ) );
	float dotVH = saturate( dot( viewDir, halfDir ) );
	vec3 F = F_Schlick( f0, f90, dotVH );
	#ifdef USE_IRIDESCENCE
		F = mix( F, material.iridescenceFresnel, material.iridescence );
	#endif
	#ifdef USE_ANISOTROPY
		float dotTL = dot( material.anisotropyT, lightDir );
		float dotTV = dot( material.anisotropyT, viewDir );
		float dotTH = dot( material.anisotropyT, halfDir );
		float dotBL = dot( material.anisotropyB, lightDir );
		float dotBV = dot( material.anisotropyB, viewDir );
		float dotBH = dot( material.anisotropyB, halfDir );
		float alphaT = max( material.alphaT, alpha );
		float V = V_GGX_SmithCorrelated_Anisotropic( alphaT, alpha, dotTV, dotBV, dotTL, dotBL, dotNV, dotNL );
		float D = D_GGX_Anisotropic( alphaT, alpha, dotNH, dotTH, dotBH );
	#else
		float V = V_GGX_SmithCorrelated( alpha, dotNL, dotNV );
		float D = D_GGX( alpha, dotNH );
	#endif
	return F * ( V * D );
}
vec2 LTC_Uv( const in vec3 N, const in vec3 V, const in float roughness ) {
	const float LUT_SIZE = 64.0;
	const float LUT_SCALE = ( LUT_SIZE - 1.0 ) / LUT_SIZE;
	const float LUT_BIAS = 0.5 / LUT_SIZE;
	float dotNV = saturate( dot( N, V ) );
	vec2 uv = vec2( roughness, sqrt( 1.0 - dotNV ) );
	uv = uv * LUT_SCALE + LUT_BIAS;
	return uv;
}
float LTC_ClippedSphereFormFactor( const in vec3 f ) {
	float l = length( f );
	return max( ( l * l + f.z ) / ( l + 1.0 ), 0.0 );
}
vec3 LTC_EdgeVectorFormFactor( const in vec3 v1, const in vec3 v2 ) {
	float x = dot( v1, v2 );
	float y = abs( x );
	float a = 0.8543985 + ( 0.4965155 + 0.0145206 * y ) * y;
	float b = 3.4175940 + ( 4.1616724 + y ) * y;
	float v = a / b;
	float theta_sintheta = ( x > 0.0 ) ? v : 0.5 * inversesqrt( max( 1.0 - x * x, 1e-7 ) ) - v;
	return cross( v1, v2 ) * theta_sintheta;
}
vec3 LTC_Evaluate( const in vec3 N, const in vec3 V, const in vec3 P, const in mat3 mInv, const in vec3 rectCoords[ 4 ] ) {
	vec3 v1 = rectCoords[ 1 ] - rectCoords[ 0 ];
	vec3 v2 = rectCoords[ 3 ] - rectCoords[ 0 ];
	vec3 lightNormal = cross( v1, v2 );
	if( dot( lightNormal, P - rectCoords[ 0 ] ) < 0.0 ) return vec3( 0.0 );
	vec3 T1, T2;
	T1 = normalize( V - N * dot( V, N ) );
	T2 = - cross( N, T1 );
	mat3 mat = mInv * transpose( mat3( T1, T2, N ) );
	vec3 coords[ 4 ];
	coords[ 0 ] = mat * ( rectCoords[ 0 ] - P );
	coords[ 1 ] = mat * ( rectCoords[ 1 ] - P );
	coords[ 2 ] = mat * ( rectCoords[ 2 ] - P );
	coords[ 3 ] = mat * ( rectCoords[ 3 ] - P );
	coords[ 0 ] = normalize( coords[ 0 ] );
	coords[ 1 ] = normalize( coords[ 1 ] );
	coords[ 2 ] = normalize( coords[ 2 ] );
	coords[ 3 ] = normalize( coords[ 3 ] );
	vec3 vectorFormFactor = vec3( 0.0 );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 0 ], coords[ 1 ] );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 1 ], coords[ 2 ] );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 2 ], coords[ 3 ] );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 3 ], coords[ 0 ] );
	float result = LTC_ClippedSphereFormFactor( vectorFormFactor );
	return vec3( result );
}
#if defined( USE_SHEEN )
float D_Charlie( float roughness, float dotNH ) {
	float alpha = pow2( roughness );
	float invAlpha = 1.0 / alpha;
	float cos2h = dotNH * dotNH;
	float sin2h = max( 1.0 - cos2h, 0.0078125 );
	return ( 2.0 + invAlpha ) * pow( sin2h, invAlpha * 0.5 ) / ( 2.0 * PI );
}
float V_Neubelt( float dotNV, float dotNL ) {
	return saturate( 1.0 / ( 4.0 * ( dotNL + dotNV - dotNL * dotNV ) ) );
}
vec3 BRDF_Sheen( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, vec3 sheenColor, const in float sheenRoughness ) {
	vec3 halfDir = normalize( lightDir + viewDir );
	float dotNL = saturate( dot( normal, lightDir ) );
	float dotNV = saturate( dot( normal, viewDir ) );
	float dotNH = saturate( dot( normal, halfDir ) );
	float D = D_Charlie( sheenRoughness, dotNH );
	float V = V_Neubelt( dotNV, dotNL );
	return sheenColor * ( D * V );
}
#endif
float IBLSheenBRDF( const in vec3 normal, const in vec3 viewDir, const in float roughness ) {
	float dotNV = saturate( dot( normal, viewDir ) );
	float r2 = roughness * roughness;
	float rInv = 1.0 / ( roughness + 0.1 );
	float a = -1.9362 + 1.0678 * roughness + 0.4573 * r2 - 0.8469 * rInv;
	float b = -0.6014 + 0.5538 * roughness - 0.4670 * r2 - 0.1255 * rInv;
	float DG = exp( a * dotNV + b );
	return saturate( DG );
}
vec3 EnvironmentBRDF( const in vec3 normal, const in vec3 viewDir, const in vec3 specularColor, const in float specularF90, const in float roughness ) {
	float dotNV = saturate( dot( normal, viewDir ) );
	vec2 fab = texture2D( dfgLUT, vec2( roughness, dotNV ) ).rg;
	return specularColor * fab.x + specularF90 * fab.y;
}
#ifdef USE_IRIDESCENCE
void computeMultiscatteringIridescence( const in vec2 fab, const in vec3 specularColor, const in float specularF90, const in float iridescence, const in vec3 iridescenceF0, inout vec3 singleScatter, inout vec3 multiScatter ) {
#else
void computeMultiscattering( const in vec2 fab, const in vec3 specularColor, const in float specularF90, inout vec3 singleScatter, inout vec3 multiScatter ) {
#endif
	#ifdef USE_IRIDESCENCE
		vec3 Fr = mix( specularColor, iridescenceF0, iridescence );
	#else
		vec3 Fr = specularColor;
	#endif
	vec3 FssEss = Fr * fab.x + specularF90 * fab.y;
	float Ess = fab.x + fab.y;
	float Ems = 1.0 - Ess;
	vec3 Favg = Fr + ( 1.0 - Fr ) * 0.047619;	vec3 Fms = FssEss * Favg / ( 1.0 - Ems * Favg );
	singleScatter += FssEss;
	multiScatter += Fms * Ems;
}
#if NUM_RECT_AREA_LIGHTS > 0
	void RE_Direct_RectArea_Physical( const in RectAreaLight rectAreaLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight ) {
		vec3 normal = geometryNormal;
		vec3 viewDir = geometryViewDir;
		vec3 position = geometryPosition;
		vec3 lightPos = rectAreaLight.position;
		vec3 halfWidth = rectAreaLight.halfWidth;
		vec3 halfHeight = rectAreaLight.halfHeight;
		vec3 lightColor = rectAreaLight.color;
		float roughness = material.roughness;
		vec3 rectCoords[ 4 ];
		rectCoords[ 0 ] = lightPos + halfWidth - halfHeight;		rectCoords[ 1 ] = lightPos - halfWidth - halfHeight;
		rectCoords[ 2 ] = lightPos - halfWidth + halfHeight;
		rectCoords[ 3 ] = lightPos + halfWidth + halfHeight;
		vec2 uv = LTC_Uv( normal, viewDir, roughness );
		vec4 t1 = texture2D( ltc_1, uv );
		vec4 t2 = texture2D( ltc_2, uv );
		mat3 mInv = mat3(
			vec3( t1.x, 0, t1.y ),
			vec3(    0, 1,    0 ),
			vec3( t1.z, 0, t1.w )
		);
		vec3 fresnel = ( material.specularColorBlended * t2.x + ( material.specularF90 - material.specularColorBlended ) * t2.y );
		reflectedLight.directSpecular += lightColor * fresnel * LTC_Evaluate( normal, viewDir, position, mInv, rectCoords );
		reflectedLight.directDiffuse += lightColor * material.diffuseContribution * LTC_Evaluate( normal, viewDir, position, mat3( 1.0 ), rectCoords );
		#ifdef USE_CLEARCOAT
			vec3 Ncc = geometryClearcoatNormal;
			vec2 uvClearcoat = LTC_Uv( Ncc, viewDir, material.clearcoatRoughness );
			vec4 t1Clearcoat = texture2D( ltc_1, uvClearcoat );
			vec4 t2Clearcoat = texture2D( ltc_2, uvClearcoat );
			mat3 mInvClearcoat = mat3(
				vec3( t1Clearcoat.x, 0, t1Clearcoat.y ),
				vec3(             0, 1,             0 ),
				vec3( t1Clearcoat.z, 0, t1Clearcoat.w )
			);
			vec3 fresnelClearcoat = material.clearcoatF0 * t2Clearcoat.x + ( material.clearcoatF90 - material.clearcoatF0 ) * t2Clearcoat.y;
			clearcoatSpecularDirect += lightColor * fresnelClearcoat * LTC_Evaluate( Ncc, viewDir, position, mInvClearcoat, rectCoords );
		#endif
	}
#endif
void RE_Direct_Physical( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight ) {
	float dotNL = saturate( dot( geometryNormal, directLight.direction ) );
	vec3 irradiance = dotNL * directLight.color;
	#ifdef USE_CLEARCOAT
		float dotNLcc = saturate( dot( geometryClearcoatNormal, directLight.direction ) );
		vec3 ccIrradiance = dotNLcc * directLight.color;
		clearcoatSpecularDirect += ccIrradiance * BRDF_GGX_Clearcoat( directLight.direction, geometryViewDir, geometryClearcoatNormal, material );
	#endif
	#ifdef USE_SHEEN
 
 		sheenSpecularDirect += irradiance * BRDF_Sheen( directLight.direction, geometryViewDir, geometryNormal, material.sheenColor, material.sheenRoughness );
 
 		float sheenAlbedoV = IBLSheenBRDF( geometryNormal, geometryViewDir, material.sheenRoughness );
 		float sheenAlbedoL = IBLSheenBRDF( geometryNormal, directLight.direction, material.sheenRoughness );
 
 		float sheenEnergyComp = 1.0 - max3( material.sheenColor ) * max( sheenAlbedoV, sheenAlbedoL );
 
 		irradiance *= sheenEnergyComp;
 
 	#endif
	vec3 specularBRDF = BRDF_GGX( directLight.direction, geometryViewDir, geometryNormal, material );
	#ifdef USE_RETROREFLECTION
		vec3 retroViewDir = reflect( - geometryViewDir, geometryNormal );
		vec3 retroSpecularBRDF = BRDF_GGX( directLight.direction, retroViewDir, geometryNormal, material );
		specularBRDF = mix( specularBRDF, retroSpecularBRDF, saturate( material.retroreflectivity ) );
	#endif
	reflectedLight.directSpecular += irradiance * specularBRDF * material.multiScatteringCompensation;
	vec3 halfDir = normalize( directLight.direction + geometryViewDir );
	float dotVH = saturate( dot( geometryViewDir, halfDir ) );
	vec3 F = F_Schlick( material.specularColor, material.specularF90, dotVH );
	#ifdef USE_RETROREFLECTION
		vec3 retroHalfDir = normalize( directLight.direction + retroViewDir );
		float dotRetroVH = saturate( dot( retroViewDir, retroHalfDir ) );
		vec3 retroF = F_Schlick( material.specularColor, material.specularF90, dotRetroVH );
		F = mix( F, retroF, saturate( material.retroreflectivity ) );
	#endif
	#ifdef USE_DIFFUSE_ROUGHNESS
		vec3 diffuseBRDF = BRDF_EON( directLight.direction, geometryViewDir, geometryNormal, material.diffuseColor, material.diffuseRoughness ) * ( 1.0 - material.metalness );
	#else
		vec3 diffuseBRDF = BRDF_Lambert( material.diffuseContribution );
	#endif
	reflectedLight.directDiffuse += irradiance * diffuseBRDF * ( 1.0 - F );
}
void RE_IndirectDiffuse_Physical( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight ) {
	vec3 singleScattering = vec3( 0.0 );
	vec3 multiScattering = vec3( 0.0 );
	#ifdef USE_IRIDESCENCE
		computeMultiscatteringIridescence( material.dfg, material.specularColor, material.specularF90, material.iridescence, material.iridescenceF0Dielectric, singleScattering, multiScattering );
	#else
		computeMultiscattering( material.dfg, material.specularColor, material.specularF90, singleScattering, multiScattering );
	#endif
	#ifdef USE_DIFFUSE_ROUGHNESS
		float dotNV = saturate( dot( geometryNormal, geometryViewDir ) );
		vec3 diffuseAlbedo = EON_DirectionalAlbedo( material.diffuseColor, material.diffuseRoughness, dotNV ) * ( 1.0 - material.metalness );
		vec3 diffuse = irradiance * RECIPROCAL_PI * diffuseAlbedo * ( 1.0 - singleScattering - multiScattering );
	#else
		vec3 diffuse = irradiance * BRDF_Lambert( material.diffuseContribution ) * ( 1.0 - singleScattering - multiScattering );
	#endif
	#ifdef USE_SHEEN
		float sheenAlbedo = IBLSheenBRDF( geometryNormal, geometryViewDir, material.sheenRoughness );
		sheenSpecularIndirect += irradiance * material.sheenColor * sheenAlbedo * RECIPROCAL_PI;
		float sheenEnergyComp = 1.0 - max3( material.sheenColor ) * sheenAlbedo;
		diffuse *= sheenEnergyComp;
	#endif
	reflectedLight.indirectDiffuse += diffuse;
}
void RE_IndirectSpecular_Physical( const in vec3 radiance, const in vec3 irradiance, const in vec3 clearcoatRadiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight) {
	#ifdef USE_CLEARCOAT
		clearcoatSpecularIndirect += clearcoatRadiance * EnvironmentBRDF( geometryClearcoatNormal, geometryViewDir, material.clearcoatF0, material.clearcoatF90, material.clearcoatRoughness );
	#endif
	#ifdef USE_SHEEN
		sheenSpecularIndirect += irradiance * material.sheenColor * IBLSheenBRDF( geometryNormal, geometryViewDir, material.sheenRoughness ) * RECIPROCAL_PI;
 	#endif
	vec3 singleScatteringDielectric = vec3( 0.0 );
	vec3 multiScatteringDielectric = vec3( 0.0 );
	vec3 singleScatteringMetallic = vec3( 0.0 );
	vec3 multiScatteringMetallic = vec3( 0.0 );
	#ifdef USE_IRIDESCENCE
		computeMultiscatteringIridescence( material.dfg, material.specularColor, material.specularF90, material.iridescence, material.iridescenceF0Dielectric, singleScatteringDielectric, multiScatteringDielectric );
		computeMultiscatteringIridescence( material.dfg, material.diffuseColor, material.specularF90, material.iridescence, material.iridescenceF0Metallic, singleScatteringMetallic, multiScatteringMetallic );
	#else
		computeMultiscattering( material.dfg, material.specularColor, material.specularF90, singleScatteringDielectric, multiScatteringDielectric );
		computeMultiscattering( material.dfg, material.diffuseColor, material.specularF90, singleScatteringMetallic, multiScatteringMetallic );
	#endif
	vec3 singleScattering = mix( singleScatteringDielectric, singleScatteringMetallic, material.metalness );
	vec3 multiScattering = mix( multiScatteringDielectric, multiScatteringMetallic, material.metalness );
	vec3 totalScatteringDielectric = singleScatteringDielectric + multiScatteringDielectric;
	#ifdef USE_DIFFUSE_ROUGHNESS
		float dotNV = saturate( dot( geometryNormal, geometryViewDir ) );
		vec3 diffuse = EON_DirectionalAlbedo( material.diffuseColor, material.diffuseRoughness, dotNV ) * ( 1.0 - material.metalness ) * ( 1.0 - totalScatteringDielectric );
	#else
		vec3 diffuse = material.diffuseContribution * ( 1.0 - totalScatteringDielectric );
	#endif
	vec3 cosineWeightedIrradiance = irradiance * RECIPROCAL_PI;
	vec3 indirectSpecular = radiance * singleScattering;
	indirectSpecular += multiScattering * cosineWeightedIrradiance;
	vec3 indirectDiffuse = diffuse * cosineWeightedIrradiance;
	#ifdef USE_SHEEN
		float sheenAlbedo = IBLSheenBRDF( geometryNormal, geometryViewDir, material.sheenRoughness );
		float sheenEnergyComp = 1.0 - max3( material.sheenColor ) * sheenAlbedo;
		indirectSpecular *= sheenEnergyComp;
		indirectDiffuse *= sheenEnergyComp;
	#endif
	reflectedLight.indirectSpecular += indirectSpecular;
	reflectedLight.indirectDiffuse += indirectDiffuse;
}
#define RE_Direct				RE_Direct_Physical
#define RE_Direct_RectArea		RE_Direct_RectArea_Physical
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Physical
#define RE_IndirectSpecular		RE_IndirectSpecular_Physical
float computeSpecularOcclusion( const in float dotNV, const in float ambientOcclusion, const in float roughness ) {
	return saturate( pow( dotNV + ambientOcclusion, exp2( - 16.0 * roughness - 1.0 ) ) - 1.0 + ambientOcclusion );
}`,RM=`
vec3 geometryPosition = - vViewPosition;
vec3 geometryNormal = normal;
vec3 geometryViewDir = ( isOrthographic ) ? vec3( 0, 0, 1 ) : normalize( vViewPosition );
vec3 geometryClearcoatNormal = vec3( 0.0 );
#ifdef USE_CLEARCOAT
	geometryClearcoatNormal = clearcoatNormal;
#endif
#ifdef USE_IRIDESCENCE
	float dotNVi = saturate( dot( normal, geometryViewDir ) );
	if ( material.iridescenceThickness == 0.0 ) {
		material.iridescence = 0.0;
	} else {
		material.iridescence = saturate( material.iridescence );
	}
	if ( material.iridescence > 0.0 ) {
		vec3 iridescenceFresnelDielectric = evalIridescence( 1.0, material.iridescenceIOR, dotNVi, material.iridescenceThickness, material.specularColor );
		vec3 iridescenceFresnelMetallic = evalIridescence( 1.0, material.iridescenceIOR, dotNVi, material.iridescenceThickness, material.diffuseColor );
		material.iridescenceFresnel = mix( iridescenceFresnelDielectric, iridescenceFresnelMetallic, material.metalness );
		material.iridescenceF0Dielectric = Schlick_to_F0( iridescenceFresnelDielectric, 1.0, dotNVi );
		material.iridescenceF0Metallic = Schlick_to_F0( iridescenceFresnelMetallic, 1.0, dotNVi );
	}
#endif
#ifdef STANDARD
	float dotNVms = saturate( dot( geometryNormal, geometryViewDir ) );
	material.dfg = texture2D( dfgLUT, vec2( material.roughness, dotNVms ) ).rg;
	#if ( NUM_SUN_LIGHTS > 0 || NUM_DIR_LIGHTS > 0 || NUM_POINT_LIGHTS > 0 || NUM_SPOT_LIGHTS > 0 )
		float EssMs = material.dfg.x + material.dfg.y;
		material.multiScatteringCompensation = 1.0 + material.specularColorBlended * ( 1.0 / EssMs - 1.0 );
	#endif
#endif
IncidentLight directLight;
#if ( NUM_POINT_LIGHTS > 0 ) && defined( RE_Direct )
	PointLight pointLight;
	#if defined( USE_SHADOWMAP ) && NUM_POINT_LIGHT_SHADOWS > 0
	PointLightShadow pointLightShadow;
	#endif
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_POINT_LIGHTS; i ++ ) {
		pointLight = pointLights[ i ];
		getPointLightInfo( pointLight, geometryPosition, directLight );
		#if defined( USE_SHADOWMAP ) && ( UNROLLED_LOOP_INDEX < NUM_POINT_LIGHT_SHADOWS ) && ( defined( SHADOWMAP_TYPE_PCF ) || defined( SHADOWMAP_TYPE_BASIC ) )
		pointLightShadow = pointLightShadows[ i ];
		directLight.color *= ( directLight.visible && receiveShadow ) ? getPointShadow( pointShadowMap[ i ], pointLightShadow.shadowMapSize, pointLightShadow.shadowIntensity, pointLightShadow.shadowBias, pointLightShadow.shadowRadius, vPointShadowCoord[ i ], pointLightShadow.shadowCameraNear, pointLightShadow.shadowCameraFar ) : 1.0;
		#endif
		RE_Direct( directLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if ( NUM_SPOT_LIGHTS > 0 ) && defined( RE_Direct )
	SpotLight spotLight;
	vec4 spotColor;
	vec3 spotLightCoord;
	bool inSpotLightMap;
	#if defined( USE_SHADOWMAP ) && NUM_SPOT_LIGHT_SHADOWS > 0
	SpotLightShadow spotLightShadow;
	#endif
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SPOT_LIGHTS; i ++ ) {
		spotLight = spotLights[ i ];
		getSpotLightInfo( spotLight, geometryPosition, directLight );
		#if ( UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS )
		#define SPOT_LIGHT_MAP_INDEX UNROLLED_LOOP_INDEX
		#elif ( UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS )
		#define SPOT_LIGHT_MAP_INDEX NUM_SPOT_LIGHT_MAPS
		#else
		#define SPOT_LIGHT_MAP_INDEX ( UNROLLED_LOOP_INDEX - NUM_SPOT_LIGHT_SHADOWS + NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS )
		#endif
		#if ( SPOT_LIGHT_MAP_INDEX < NUM_SPOT_LIGHT_MAPS )
			spotLightCoord = vSpotLightCoord[ i ].xyz / vSpotLightCoord[ i ].w;
			inSpotLightMap = all( lessThan( abs( spotLightCoord * 2. - 1. ), vec3( 1.0 ) ) );
			spotColor = texture2D( spotLightMap[ SPOT_LIGHT_MAP_INDEX ], spotLightCoord.xy );
			directLight.color = inSpotLightMap ? directLight.color * spotColor.rgb : directLight.color;
		#endif
		#undef SPOT_LIGHT_MAP_INDEX
		#if defined( USE_SHADOWMAP ) && ( UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS )
		spotLightShadow = spotLightShadows[ i ];
		directLight.color *= ( directLight.visible && receiveShadow ) ? getShadow( spotShadowMap[ i ], spotLightShadow.shadowMapSize, spotLightShadow.shadowIntensity, spotLightShadow.shadowBias, spotLightShadow.shadowRadius, vSpotLightCoord[ i ] ) : 1.0;
		#endif
		RE_Direct( directLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if ( NUM_SUN_LIGHTS > 0 ) && defined( RE_Direct )
	SunLight sunLight;
	#if defined( USE_SHADOWMAP ) && NUM_SUN_LIGHT_SHADOWS > 0
	SunLightShadow sunLightShadow;
	#endif
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SUN_LIGHTS; i ++ ) {
		sunLight = sunLights[ i ];
		getSunLightInfo( sunLight, directLight );
		#if defined( USE_SHADOWMAP ) && ( UNROLLED_LOOP_INDEX < NUM_SUN_LIGHT_SHADOWS )
		sunLightShadow = sunLightShadows[ i ];
		directLight.color *= ( directLight.visible && receiveShadow ) ? getSunShadow( sunShadowMap[ i ], sunLightShadow, UNROLLED_LOOP_INDEX ) : 1.0;
		#endif
		RE_Direct( directLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if ( NUM_DIR_LIGHTS > 0 ) && defined( RE_Direct )
	DirectionalLight directionalLight;
	#if defined( USE_SHADOWMAP ) && NUM_DIR_LIGHT_SHADOWS > 0
	DirectionalLightShadow directionalLightShadow;
	#endif
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_DIR_LIGHTS; i ++ ) {
		directionalLight = directionalLights[ i ];
		getDirectionalLightInfo( directionalLight, directLight );
		#if defined( USE_SHADOWMAP ) && ( UNROLLED_LOOP_INDEX < NUM_DIR_LIGHT_SHADOWS )
		directionalLightShadow = directionalLightShadows[ i ];
		directLight.color *= ( directLight.visible && receiveShadow ) ? getShadow( directionalShadowMap[ i ], directionalLightShadow.shadowMapSize, directionalLightShadow.shadowIntensity, directionalLightShadow.shadowBias, directionalLightShadow.shadowRadius, vDirectionalShadowCoord[ i ] ) : 1.0;
		#endif
		RE_Direct( directLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if ( NUM_RECT_AREA_LIGHTS > 0 ) && defined( RE_Direct_RectArea )
	RectAreaLight rectAreaLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_RECT_AREA_LIGHTS; i ++ ) {
		rectAreaLight = rectAreaLights[ i ];
		RE_Direct_RectArea( rectAreaLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if defined( RE_IndirectDiffuse )
	vec3 iblIrradiance = vec3( 0.0 );
	vec3 irradiance = getAmbientLightIrradiance( ambientLightColor );
	#if defined( USE_LIGHT_PROBES )
		irradiance += getLightProbeIrradiance( lightProbe, geometryNormal );
	#endif
	#if ( NUM_HEMI_LIGHTS > 0 )
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_HEMI_LIGHTS; i ++ ) {
			irradiance += getHemisphereLightIrradiance( hemisphereLights[ i ], geometryNormal );
		}
		#pragma unroll_loop_end
	#endif
	#if NUM_LIGHT_PROBE_GRIDS > 0
		vec3 probeWorldPos = ( ( vec4( geometryPosition, 1.0 ) - viewMatrix[ 3 ] ) * viewMatrix ).xyz;
		vec3 probeWorldNormal = transformNormalByInverseViewMatrix( geometryNormal, viewMatrix );
		int probeGrid = - 1;
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_LIGHT_PROBE_GRIDS; i ++ ) {
			if ( isInsideLightProbeGrid( probeWorldPos, probeWorldNormal, probesMin[ i ], probesMax[ i ], probesResolution[ i ] ) ) probeGrid = UNROLLED_LOOP_INDEX;
		}
		#pragma unroll_loop_end
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_LIGHT_PROBE_GRIDS; i ++ ) {
			if ( probeGrid == UNROLLED_LOOP_INDEX ) irradiance += getLightProbeGridIrradiance( probesSH[ i ], probesMin[ i ], probesMax[ i ], probesResolution[ i ], probeWorldPos, probeWorldNormal );
		}
		#pragma unroll_loop_end
	#endif
#endif
#if defined( RE_IndirectSpecular )
	vec3 radiance = vec3( 0.0 );
	vec3 clearcoatRadiance = vec3( 0.0 );
#endif`,PM=`#if defined( RE_IndirectDiffuse )
	#ifdef USE_LIGHTMAP
		vec4 lightMapTexel = texture2D( lightMap, vLightMapUv );
		vec3 lightMapIrradiance = lightMapTexel.rgb * lightMapIntensity;
		irradiance += lightMapIrradiance;
	#endif
	#if defined( USE_ENVMAP ) && defined( ENVMAP_TYPE_PMREM )
		#if defined( STANDARD ) || defined( LAMBERT ) || defined( PHONG )
			iblIrradiance += getIBLIrradiance( geometryNormal );
		#endif
	#endif
#endif
#if defined( USE_ENVMAP ) && defined( RE_IndirectSpecular )
	#ifdef USE_ANISOTROPY
		vec3 iblRadiance = getIBLAnisotropyRadiance( geometryViewDir, geometryNormal, material.roughness, material.anisotropyB, material.anisotropy );
	#else
		vec3 iblRadiance = getIBLRadiance( geometryViewDir, geometryNormal, material.roughness );
	#endif
	#ifdef USE_RETROREFLECTION
		#ifdef USE_ANISOTROPY
			vec3 retroIBLRadiance = getIBLAnisotropyRetroRadiance( geometryViewDir, geometryNormal, material.roughness, material.anisotropyB, material.anisotropy );
		#else
			vec3 retroIBLRadiance = getIBLRetroRadiance( geometryViewDir, geometryNormal, material.roughness );
		#endif
		iblRadiance = mix( iblRadiance, retroIBLRadiance, saturate( material.retroreflectivity ) );
	#endif
	radiance += iblRadiance;
	#ifdef USE_CLEARCOAT
		clearcoatRadiance += getIBLRadiance( geometryViewDir, geometryClearcoatNormal, material.clearcoatRoughness );
	#endif
#endif`,IM=`#if defined( RE_IndirectDiffuse )
	#if defined( LAMBERT ) || defined( PHONG )
		irradiance += iblIrradiance;
	#endif
	RE_IndirectDiffuse( irradiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif
#if defined( RE_IndirectSpecular )
	RE_IndirectSpecular( radiance, iblIrradiance, clearcoatRadiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif`,DM=`#if NUM_LIGHT_PROBE_GRIDS > 0
uniform highp sampler3D probesSH[ NUM_LIGHT_PROBE_GRIDS ];
uniform vec3 probesMin[ NUM_LIGHT_PROBE_GRIDS ];
uniform vec3 probesMax[ NUM_LIGHT_PROBE_GRIDS ];
uniform vec3 probesResolution[ NUM_LIGHT_PROBE_GRIDS ];
bool isInsideLightProbeGrid( vec3 worldPos, vec3 worldNormal, vec3 probesMin, vec3 probesMax, vec3 probesResolution ) {
	vec3 spacing = ( probesMax - probesMin ) / probesResolution;
	vec3 samplePos = worldPos + worldNormal * spacing * 0.5;
	vec3 margin = spacing * 0.01;
	return all( greaterThanEqual( samplePos, probesMin - margin ) ) && all( lessThanEqual( samplePos, probesMax + margin ) );
}
vec3 getLightProbeGridIrradiance( highp sampler3D probesSH, vec3 probesMin, vec3 probesMax, vec3 probesResolution, vec3 worldPos, vec3 worldNormal ) {
	vec3 res = probesResolution;
	vec3 gridRange = probesMax - probesMin;
	vec3 probeSpacing = gridRange / res;
	vec3 samplePos = worldPos + worldNormal * probeSpacing * 0.5;
	vec3 uvw = clamp( ( samplePos - probesMin ) / gridRange, 0.5 / res, 1.0 - 0.5 / res );
	float nz          = res.z;
	float paddedSlices = nz + 2.0;
	float atlasDepth  = 7.0 * paddedSlices;
	float uvZBase     = uvw.z * nz + 1.0;
	vec4 s0 = texture( probesSH, vec3( uvw.xy, ( uvZBase                       ) / atlasDepth ) );
	vec4 s1 = texture( probesSH, vec3( uvw.xy, ( uvZBase +       paddedSlices   ) / atlasDepth ) );
	vec4 s2 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 2.0 * paddedSlices   ) / atlasDepth ) );
	vec4 s3 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 3.0 * paddedSlices   ) / atlasDepth ) );
	vec4 s4 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 4.0 * paddedSlices   ) / atlasDepth ) );
	vec4 s5 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 5.0 * paddedSlices   ) / atlasDepth ) );
	vec4 s6 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 6.0 * paddedSlices   ) / atlasDepth ) );
	vec3 c0 = s0.xyz;
	vec3 c1 = vec3( s0.w, s1.xy );
	vec3 c2 = vec3( s1.zw, s2.x );
	vec3 c3 = s2.yzw;
	vec3 c4 = s3.xyz;
	vec3 c5 = vec3( s3.w, s4.xy );
	vec3 c6 = vec3( s4.zw, s5.x );
	vec3 c7 = s5.yzw;
	vec3 c8 = s6.xyz;
	float x = worldNormal.x, y = worldNormal.y, z = worldNormal.z;
	vec3 result = c0 * 0.886227;
	result += c1 * 2.0 * 0.511664 * y;
	result += c2 * 2.0 * 0.511664 * z;
	result += c3 * 2.0 * 0.511664 * x;
	result += c4 * 2.0 * 0.429043 * x * y;
	result += c5 * 2.0 * 0.429043 * y * z;
	result += c6 * ( 0.743125 * z * z - 0.247708 );
	result += c7 * 2.0 * 0.429043 * x * z;
	result += c8 * 0.429043 * ( x * x - y * y );
	return max( result, vec3( 0.0 ) );
}
#endif`,LM=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	gl_FragDepth = vIsPerspective == 0.0 ? gl_FragCoord.z : log2( vFragDepth ) * logDepthBufFC * 0.5;
#endif`,NM=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	uniform float logDepthBufFC;
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,UM=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,OM=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	vFragDepth = 1.0 + gl_Position.w;
	vIsPerspective = float( isPerspectiveMatrix( projectionMatrix ) );
#endif`,kM=`#ifdef USE_MAP
	vec4 sampledDiffuseColor = texture2D( map, vMapUv );
	#ifdef DECODE_VIDEO_TEXTURE
		sampledDiffuseColor = sRGBTransferEOTF( sampledDiffuseColor );
	#endif
	diffuseColor *= sampledDiffuseColor;
#endif`,FM=`#ifdef USE_MAP
	uniform sampler2D map;
#endif`,BM=`#if defined( USE_MAP ) || defined( USE_ALPHAMAP )
	#if defined( USE_POINTS_UV )
		vec2 uv = vUv;
	#else
		vec2 uv = ( uvTransform * vec3( gl_PointCoord.x, 1.0 - gl_PointCoord.y, 1 ) ).xy;
	#endif
#endif
#ifdef USE_MAP
	diffuseColor *= texture2D( map, uv );
#endif
#ifdef USE_ALPHAMAP
	diffuseColor.a *= texture2D( alphaMap, uv ).g;
#endif`,zM=`#if defined( USE_POINTS_UV )
	varying vec2 vUv;
#else
	#if defined( USE_MAP ) || defined( USE_ALPHAMAP )
		uniform mat3 uvTransform;
	#endif
#endif
#ifdef USE_MAP
	uniform sampler2D map;
#endif
#ifdef USE_ALPHAMAP
	uniform sampler2D alphaMap;
#endif`,VM=`float metalnessFactor = metalness;
#ifdef USE_METALNESSMAP
	vec4 texelMetalness = texture2D( metalnessMap, vMetalnessMapUv );
	metalnessFactor *= texelMetalness.b;
#endif`,GM=`#ifdef USE_METALNESSMAP
	uniform sampler2D metalnessMap;
#endif`,HM=`#ifdef USE_INSTANCING_MORPH
	float morphTargetInfluences[ MORPHTARGETS_COUNT ];
	float morphTargetBaseInfluence = texelFetch( morphTexture, ivec2( 0, gl_InstanceID ), 0 ).r;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		morphTargetInfluences[i] =  texelFetch( morphTexture, ivec2( i + 1, gl_InstanceID ), 0 ).r;
	}
#endif`,WM=`#if defined( USE_MORPHCOLORS )
	#if defined( USE_COLOR_ALPHA )
		vColor *= morphTargetBaseInfluence;
	#elif defined( USE_COLOR )
		vColor.rgb *= morphTargetBaseInfluence;
	#endif
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		#if defined( USE_COLOR_ALPHA )
			if ( morphTargetInfluences[ i ] != 0.0 ) vColor += getMorph( gl_VertexID, i, 2 ) * morphTargetInfluences[ i ];
		#elif defined( USE_COLOR )
			if ( morphTargetInfluences[ i ] != 0.0 ) vColor.rgb += getMorph( gl_VertexID, i, 2 ).rgb * morphTargetInfluences[ i ];
		#endif
	}
#endif`,$M=`#ifdef USE_MORPHNORMALS
	objectNormal *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) objectNormal += getMorph( gl_VertexID, i, 1 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,XM=`#ifdef USE_MORPHTARGETS
	#ifndef USE_INSTANCING_MORPH
		uniform float morphTargetBaseInfluence;
		uniform float morphTargetInfluences[ MORPHTARGETS_COUNT ];
	#endif
	uniform sampler2DArray morphTargetsTexture;
	uniform ivec2 morphTargetsTextureSize;
	vec4 getMorph( const in int vertexIndex, const in int morphTargetIndex, const in int offset ) {
		int texelIndex = vertexIndex * MORPHTARGETS_TEXTURE_STRIDE + offset;
		int y = texelIndex / morphTargetsTextureSize.x;
		int x = texelIndex - y * morphTargetsTextureSize.x;
		ivec3 morphUV = ivec3( x, y, morphTargetIndex );
		return texelFetch( morphTargetsTexture, morphUV, 0 );
	}
#endif`,qM=`#ifdef USE_MORPHTARGETS
	transformed *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) transformed += getMorph( gl_VertexID, i, 0 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,YM=`float faceDirection = gl_FrontFacing ? 1.0 : - 1.0;
#ifdef FLAT_SHADED
	vec3 fdx = dFdx( vViewPosition );
	vec3 fdy = dFdy( vViewPosition );
	vec3 normal = normalize( cross( fdx, fdy ) );
#else
	vec3 normal = normalize( vNormal );
	#ifdef DOUBLE_SIDED
		normal *= faceDirection;
	#endif
#endif
#if defined( USE_NORMALMAP_TANGENTSPACE ) || defined( USE_CLEARCOAT_NORMALMAP ) || defined( USE_ANISOTROPY )
	#ifdef USE_TANGENT
		mat3 tbn = mat3( normalize( vTangent ), normalize( vBitangent ), normal );
	#else
		mat3 tbn = getTangentFrame( - vViewPosition, normal,
		#if defined( USE_NORMALMAP )
			vNormalMapUv
		#elif defined( USE_CLEARCOAT_NORMALMAP )
			vClearcoatNormalMapUv
		#else
			vUv
		#endif
		);
	#endif
	#ifdef DOUBLE_SIDED
		tbn[0] *= faceDirection;
		tbn[1] *= faceDirection;
	#endif
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	#ifdef USE_TANGENT
		mat3 tbn2 = mat3( normalize( vTangent ), normalize( vBitangent ), normal );
	#else
		mat3 tbn2 = getTangentFrame( - vViewPosition, normal, vClearcoatNormalMapUv );
	#endif
	#ifdef DOUBLE_SIDED
		tbn2[0] *= faceDirection;
		tbn2[1] *= faceDirection;
	#endif
#endif
vec3 nonPerturbedNormal = normal;`,ZM=`#ifdef USE_NORMALMAP_OBJECTSPACE
	normal = texture2D( normalMap, vNormalMapUv ).xyz * 2.0 - 1.0;
	#ifdef FLIP_SIDED
		normal = - normal;
	#endif
	#ifdef DOUBLE_SIDED
		normal = normal * faceDirection;
	#endif
	normal = normalize( normalMatrix * normal );
#elif defined( USE_NORMALMAP_TANGENTSPACE )
	vec3 mapN = texture2D( normalMap, vNormalMapUv ).xyz * 2.0 - 1.0;
	#if defined( USE_PACKED_NORMALMAP )
		mapN = vec3( mapN.xy, sqrt( saturate( 1.0 - dot( mapN.xy, mapN.xy ) ) ) );
	#endif
	mapN.xy *= normalScale;
	normal = normalize( tbn * mapN );
#elif defined( USE_BUMPMAP )
	normal = perturbNormalArb( - vViewPosition, normal, dHdxy_fwd(), faceDirection );
#endif`,JM=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,KM=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,jM=`#ifndef FLAT_SHADED
	vNormal = normalize( transformedNormal );
	#ifdef USE_TANGENT
		vTangent = normalize( transformedTangent );
		vBitangent = normalize( cross( vNormal, vTangent ) * tangent.w );
		#ifdef FLIP_SIDED
			vBitangent = - vBitangent;
		#endif
	#endif
#endif`,QM=`#ifdef USE_NORMALMAP
	uniform sampler2D normalMap;
	uniform vec2 normalScale;
#endif
#ifdef USE_NORMALMAP_OBJECTSPACE
	uniform mat3 normalMatrix;
#endif
#if ! defined ( USE_TANGENT ) && ( defined ( USE_NORMALMAP_TANGENTSPACE ) || defined ( USE_CLEARCOAT_NORMALMAP ) || defined( USE_ANISOTROPY ) )
	mat3 getTangentFrame( vec3 eye_pos, vec3 surf_norm, vec2 uv ) {
		vec3 q0 = dFdx( eye_pos.xyz );
		vec3 q1 = dFdy( eye_pos.xyz );
		vec2 st0 = dFdx( uv.st );
		vec2 st1 = dFdy( uv.st );
		vec3 N = surf_norm;
		vec3 q1perp = cross( q1, N );
		vec3 q0perp = cross( N, q0 );
		vec3 T = q1perp * st0.x + q0perp * st1.x;
		vec3 B = q1perp * st0.y + q0perp * st1.y;
		float det = max( dot( T, T ), dot( B, B ) );
		float scale = ( det == 0.0 ) ? 0.0 : inversesqrt( det );
		return mat3( T * scale, B * scale, N );
	}
#endif`,tS=`#ifdef USE_CLEARCOAT
	vec3 clearcoatNormal = nonPerturbedNormal;
#endif`,eS=`#ifdef USE_CLEARCOAT_NORMALMAP
	vec3 clearcoatMapN = texture2D( clearcoatNormalMap, vClearcoatNormalMapUv ).xyz * 2.0 - 1.0;
	clearcoatMapN.xy *= clearcoatNormalScale;
	clearcoatNormal = normalize( tbn2 * clearcoatMapN );
#endif`,nS=`#ifdef USE_CLEARCOATMAP
	uniform sampler2D clearcoatMap;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	uniform sampler2D clearcoatNormalMap;
	uniform vec2 clearcoatNormalScale;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	uniform sampler2D clearcoatRoughnessMap;
#endif`,iS=`#ifdef USE_IRIDESCENCEMAP
	uniform sampler2D iridescenceMap;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	uniform sampler2D iridescenceThicknessMap;
#endif`,sS=`#ifdef OPAQUE
diffuseColor.a = 1.0;
#endif
#ifdef USE_TRANSMISSION
diffuseColor.a *= material.transmissionAlpha;
#endif
gl_FragColor = vec4( outgoingLight, diffuseColor.a );`,rS=`vec3 packNormalToRGB( const in vec3 normal ) {
	return normalize( normal ) * 0.5 + 0.5;
}
vec3 unpackRGBToNormal( const in vec3 rgb ) {
	return 2.0 * rgb.xyz - 1.0;
}
const float PackUpscale = 256. / 255.;const float UnpackDownscale = 255. / 256.;const float ShiftRight8 = 1. / 256.;
const float Inv255 = 1. / 255.;
const vec4 PackFactors = vec4( 1.0, 256.0, 256.0 * 256.0, 256.0 * 256.0 * 256.0 );
const vec2 UnpackFactors2 = vec2( UnpackDownscale, 1.0 / PackFactors.g );
const vec3 UnpackFactors3 = vec3( UnpackDownscale / PackFactors.rg, 1.0 / PackFactors.b );
const vec4 UnpackFactors4 = vec4( UnpackDownscale / PackFactors.rgb, 1.0 / PackFactors.a );
vec4 packDepthToRGBA( const in float v ) {
	if( v <= 0.0 )
		return vec4( 0., 0., 0., 0. );
	if( v >= 1.0 )
		return vec4( 1., 1., 1., 1. );
	float vuf;
	float af = modf( v * PackFactors.a, vuf );
	float bf = modf( vuf * ShiftRight8, vuf );
	float gf = modf( vuf * ShiftRight8, vuf );
	return vec4( vuf * Inv255, gf * PackUpscale, bf * PackUpscale, af );
}
vec3 packDepthToRGB( const in float v ) {
	if( v <= 0.0 )
		return vec3( 0., 0., 0. );
	if( v >= 1.0 )
		return vec3( 1., 1., 1. );
	float vuf;
	float bf = modf( v * PackFactors.b, vuf );
	float gf = modf( vuf * ShiftRight8, vuf );
	return vec3( vuf * Inv255, gf * PackUpscale, bf );
}
vec2 packDepthToRG( const in float v ) {
	if( v <= 0.0 )
		return vec2( 0., 0. );
	if( v >= 1.0 )
		return vec2( 1., 1. );
	float vuf;
	float gf = modf( v * 256., vuf );
	return vec2( vuf * Inv255, gf );
}
float unpackRGBAToDepth( const in vec4 v ) {
	return dot( v, UnpackFactors4 );
}
float unpackRGBToDepth( const in vec3 v ) {
	return dot( v, UnpackFactors3 );
}
float unpackRGToDepth( const in vec2 v ) {
	return v.r * UnpackFactors2.r + v.g * UnpackFactors2.g;
}
vec4 pack2HalfToRGBA( const in vec2 v ) {
	vec4 r = vec4( v.x, fract( v.x * 255.0 ), v.y, fract( v.y * 255.0 ) );
	return vec4( r.x - r.y / 255.0, r.y, r.z - r.w / 255.0, r.w );
}
vec2 unpackRGBATo2Half( const in vec4 v ) {
	return vec2( v.x + ( v.y / 255.0 ), v.z + ( v.w / 255.0 ) );
}
float viewZToOrthographicDepth( const in float viewZ, const in float near, const in float far ) {
	return ( viewZ + near ) / ( near - far );
}
float orthographicDepthToViewZ( const in float depth, const in float near, const in float far ) {
	#ifdef USE_REVERSED_DEPTH_BUFFER
	
		return depth * ( far - near ) - far;
	#else
		return depth * ( near - far ) - near;
	#endif
}
float viewZToPerspectiveDepth( const in float viewZ, const in float near, const in float far ) {
	return ( ( near + viewZ ) * far ) / ( ( far - near ) * viewZ );
}
float perspectiveDepthToViewZ( const in float depth, const in float near, const in float far ) {
	
	#ifdef USE_REVERSED_DEPTH_BUFFER
		return ( near * far ) / ( ( near - far ) * depth - near );
	#else
		return ( near * far ) / ( ( far - near ) * depth - far );
	#endif
}`,oS=`#ifdef PREMULTIPLIED_ALPHA
	gl_FragColor.rgb *= gl_FragColor.a;
#endif`,aS=`vec4 mvPosition = vec4( transformed, 1.0 );
#ifdef USE_BATCHING
	mvPosition = batchingMatrix * mvPosition;
#endif
#ifdef USE_INSTANCING
	mvPosition = instanceMatrix * mvPosition;
#endif
mvPosition = modelViewMatrix * mvPosition;
gl_Position = projectionMatrix * mvPosition;`,lS=`#ifdef DITHERING
	gl_FragColor.rgb = dithering( gl_FragColor.rgb );
#endif`,cS=`#ifdef DITHERING
	vec3 dithering( vec3 color ) {
		float grid_position = rand( gl_FragCoord.xy );
		vec3 dither_shift_RGB = vec3( 0.25 / 255.0, -0.25 / 255.0, 0.25 / 255.0 );
		dither_shift_RGB = mix( 2.0 * dither_shift_RGB, -2.0 * dither_shift_RGB, grid_position );
		return color + dither_shift_RGB;
	}
#endif`,uS=`float roughnessFactor = roughness;
#ifdef USE_ROUGHNESSMAP
	vec4 texelRoughness = texture2D( roughnessMap, vRoughnessMapUv );
	roughnessFactor *= texelRoughness.g;
#endif`,hS=`#ifdef USE_ROUGHNESSMAP
	uniform sampler2D roughnessMap;
#endif`,dS=`#if NUM_SPOT_LIGHT_COORDS > 0
	varying vec4 vSpotLightCoord[ NUM_SPOT_LIGHT_COORDS ];
#endif
#if NUM_SPOT_LIGHT_MAPS > 0
	uniform sampler2D spotLightMap[ NUM_SPOT_LIGHT_MAPS ];
#endif
#ifdef USE_SHADOWMAP
	#if NUM_SUN_LIGHT_SHADOWS > 0
		#define SUN_LIGHT_CASCADES 2
		#if defined( SHADOWMAP_TYPE_PCF )
			uniform sampler2DShadow sunShadowMap[ NUM_SUN_LIGHT_SHADOWS ];
		#else
			uniform sampler2D sunShadowMap[ NUM_SUN_LIGHT_SHADOWS ];
		#endif
		uniform mat4 sunShadowMatrix[ NUM_SUN_LIGHT_SHADOWS * SUN_LIGHT_CASCADES ];
		uniform vec4 sunShadowCascade[ NUM_SUN_LIGHT_SHADOWS * SUN_LIGHT_CASCADES ];
		varying vec4 vSunShadowWorldPosition;
		varying vec3 vSunShadowWorldNormal;
		struct SunLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform SunLightShadow sunLightShadows[ NUM_SUN_LIGHT_SHADOWS ];
	#endif
	#if NUM_DIR_LIGHT_SHADOWS > 0
		#if defined( SHADOWMAP_TYPE_PCF )
			uniform sampler2DShadow directionalShadowMap[ NUM_DIR_LIGHT_SHADOWS ];
		#else
			uniform sampler2D directionalShadowMap[ NUM_DIR_LIGHT_SHADOWS ];
		#endif
		varying vec4 vDirectionalShadowCoord[ NUM_DIR_LIGHT_SHADOWS ];
		struct DirectionalLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform DirectionalLightShadow directionalLightShadows[ NUM_DIR_LIGHT_SHADOWS ];
	#endif
	#if NUM_SPOT_LIGHT_SHADOWS > 0
		#if defined( SHADOWMAP_TYPE_PCF )
			uniform sampler2DShadow spotShadowMap[ NUM_SPOT_LIGHT_SHADOWS ];
		#else
			uniform sampler2D spotShadowMap[ NUM_SPOT_LIGHT_SHADOWS ];
		#endif
		struct SpotLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform SpotLightShadow spotLightShadows[ NUM_SPOT_LIGHT_SHADOWS ];
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
		#if defined( SHADOWMAP_TYPE_PCF )
			uniform samplerCubeShadow pointShadowMap[ NUM_POINT_LIGHT_SHADOWS ];
		#elif defined( SHADOWMAP_TYPE_BASIC )
			uniform samplerCube pointShadowMap[ NUM_POINT_LIGHT_SHADOWS ];
		#endif
		varying vec4 vPointShadowCoord[ NUM_POINT_LIGHT_SHADOWS ];
		struct PointLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
			float shadowCameraNear;
			float shadowCameraFar;
		};
		uniform PointLightShadow pointLightShadows[ NUM_POINT_LIGHT_SHADOWS ];
	#endif
	#if defined( SHADOWMAP_TYPE_PCF )
		float interleavedGradientNoise( vec2 position ) {
			return fract( 52.9829189 * fract( dot( position, vec2( 0.06711056, 0.00583715 ) ) ) );
		}
		vec2 vogelDiskSample( int sampleIndex, int samplesCount, float phi ) {
			const float goldenAngle = 2.399963229728653;
			float r = sqrt( ( float( sampleIndex ) + 0.5 ) / float( samplesCount ) );
			float theta = float( sampleIndex ) * goldenAngle + phi;
			return vec2( cos( theta ), sin( theta ) ) * r;
		}
	#endif
	#if defined( SHADOWMAP_TYPE_PCF )
		float getShadow( sampler2DShadow shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord ) {
			float shadow = 1.0;
			shadowCoord.xyz /= shadowCoord.w;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				shadowCoord.z -= shadowBias;
			#else
				shadowCoord.z += shadowBias;
			#endif
			bool inFrustum = shadowCoord.x >= 0.0 && shadowCoord.x <= 1.0 && shadowCoord.y >= 0.0 && shadowCoord.y <= 1.0;
			bool frustumTest = inFrustum && shadowCoord.z <= 1.0;
			if ( frustumTest ) {
				vec2 texelSize = vec2( 1.0 ) / shadowMapSize;
				vec2 radius = shadowRadius * texelSize;
				float phi = interleavedGradientNoise( gl_FragCoord.xy ) * PI2;
				shadow = (
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 0, 5, phi ) * radius, shadowCoord.z ) ) +
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 1, 5, phi ) * radius, shadowCoord.z ) ) +
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 2, 5, phi ) * radius, shadowCoord.z ) ) +
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 3, 5, phi ) * radius, shadowCoord.z ) ) +
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 4, 5, phi ) * radius, shadowCoord.z ) )
				) * 0.2;
			}
			return mix( 1.0, shadow, shadowIntensity );
		}
	#elif defined( SHADOWMAP_TYPE_VSM )
		float getShadow( sampler2D shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord ) {
			float shadow = 1.0;
			shadowCoord.xyz /= shadowCoord.w;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				shadowCoord.z -= shadowBias;
			#else
				shadowCoord.z += shadowBias;
			#endif
			bool inFrustum = shadowCoord.x >= 0.0 && shadowCoord.x <= 1.0 && shadowCoord.y >= 0.0 && shadowCoord.y <= 1.0;
			bool frustumTest = inFrustum && shadowCoord.z <= 1.0;
			if ( frustumTest ) {
				vec2 distribution = texture2D( shadowMap, shadowCoord.xy ).rg;
				float mean = distribution.x;
				float variance = distribution.y * distribution.y;
				#ifdef USE_REVERSED_DEPTH_BUFFER
					float hard_shadow = step( mean, shadowCoord.z );
				#else
					float hard_shadow = step( shadowCoord.z, mean );
				#endif
				
				if ( hard_shadow == 1.0 ) {
					shadow = 1.0;
				} else {
					variance = max( variance, 0.0000001 );
					float d = shadowCoord.z - mean;
					float p_max = variance / ( variance + d * d );
					p_max = clamp( ( p_max - 0.3 ) / 0.65, 0.0, 1.0 );
					shadow = max( hard_shadow, p_max );
				}
			}
			return mix( 1.0, shadow, shadowIntensity );
		}
	#else
		float getShadow( sampler2D shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord ) {
			float shadow = 1.0;
			shadowCoord.xyz /= shadowCoord.w;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				shadowCoord.z -= shadowBias;
			#else
				shadowCoord.z += shadowBias;
			#endif
			bool inFrustum = shadowCoord.x >= 0.0 && shadowCoord.x <= 1.0 && shadowCoord.y >= 0.0 && shadowCoord.y <= 1.0;
			bool frustumTest = inFrustum && shadowCoord.z <= 1.0;
			if ( frustumTest ) {
				float depth = texture2D( shadowMap, shadowCoord.xy ).r;
				#ifdef USE_REVERSED_DEPTH_BUFFER
					shadow = step( depth, shadowCoord.z );
				#else
					shadow = step( shadowCoord.z, depth );
				#endif
			}
			return mix( 1.0, shadow, shadowIntensity );
		}
	#endif
	#if NUM_SUN_LIGHT_SHADOWS > 0
		float getSunShadow(
			#if defined( SHADOWMAP_TYPE_PCF )
				sampler2DShadow shadowMap,
			#else
				sampler2D shadowMap,
			#endif
			SunLightShadow sunLightShadow,
			int shadowIndex
		) {
			vec4 shadowWorldPosition = vec4( vSunShadowWorldPosition.xyz + vSunShadowWorldNormal * sunLightShadow.shadowNormalBias, 1.0 );
			float viewDepth = vSunShadowWorldPosition.w;
			int cascadeOffset = shadowIndex * SUN_LIGHT_CASCADES;
			float shadow = 1.0;
			for ( int i = SUN_LIGHT_CASCADES - 1; i >= 0; i -- ) {
				vec4 cascade = sunShadowCascade[ cascadeOffset + i ];
				if ( viewDepth >= cascade.x && viewDepth < cascade.y ) {
					float cascadeShadow = getShadow(
						shadowMap,
						sunLightShadow.shadowMapSize,
						sunLightShadow.shadowIntensity,
						sunLightShadow.shadowBias,
						sunLightShadow.shadowRadius,
						sunShadowMatrix[ cascadeOffset + i ] * shadowWorldPosition
					);
					shadow = mix( cascadeShadow, shadow, smoothstep( cascade.z, cascade.y, viewDepth ) );
				}
			}
			return shadow;
		}
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
	#if defined( SHADOWMAP_TYPE_PCF )
	float getPointShadow( samplerCubeShadow shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord, float shadowCameraNear, float shadowCameraFar ) {
		float shadow = 1.0;
		vec3 lightToPosition = shadowCoord.xyz;
		vec3 bd3D = normalize( lightToPosition );
		vec3 absVec = abs( lightToPosition );
		float viewSpaceZ = max( max( absVec.x, absVec.y ), absVec.z );
		if ( viewSpaceZ - shadowCameraFar <= 0.0 && viewSpaceZ - shadowCameraNear >= 0.0 ) {
			float lightDistance = length( lightToPosition );
			float depthRange = shadowCameraFar - shadowCameraNear;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				float depthA = - shadowCameraNear / depthRange - shadowBias;
				float depthB = shadowCameraNear * shadowCameraFar / ( depthRange * lightDistance );
			#else
				float depthA = shadowCameraFar / depthRange + shadowBias;
				float depthB = - shadowCameraNear * shadowCameraFar / ( depthRange * lightDistance );
			#endif
			float texelSize = shadowRadius / shadowMapSize.x;
			vec3 absDir = abs( bd3D );
			vec3 tangent = absDir.x > absDir.z ? vec3( 0.0, 1.0, 0.0 ) : vec3( 1.0, 0.0, 0.0 );
			tangent = normalize( cross( bd3D, tangent ) );
			vec3 bitangent = cross( bd3D, tangent );
			float phi = interleavedGradientNoise( gl_FragCoord.xy ) * PI2;
			shadow = 0.0;
			for ( int i = 0; i < 5; i ++ ) {
				vec2 offset = vogelDiskSample( i, 5, phi );
				vec3 direction = bd3D + ( tangent * offset.x + bitangent * offset.y ) * texelSize;
				vec3 absDirection = abs( direction );
				float dp = depthA + depthB / max( max( absDirection.x, absDirection.y ), absDirection.z );
				shadow += texture( shadowMap, vec4( direction, dp ) );
			}
			shadow *= 0.2;
		}
		return mix( 1.0, shadow, shadowIntensity );
	}
	#elif defined( SHADOWMAP_TYPE_BASIC )
	float getPointShadow( samplerCube shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord, float shadowCameraNear, float shadowCameraFar ) {
		float shadow = 1.0;
		vec3 lightToPosition = shadowCoord.xyz;
		vec3 absVec = abs( lightToPosition );
		float viewSpaceZ = max( max( absVec.x, absVec.y ), absVec.z );
		if ( viewSpaceZ - shadowCameraFar <= 0.0 && viewSpaceZ - shadowCameraNear >= 0.0 ) {
			float dp = ( shadowCameraFar * ( viewSpaceZ - shadowCameraNear ) ) / ( viewSpaceZ * ( shadowCameraFar - shadowCameraNear ) );
			dp += shadowBias;
			vec3 bd3D = normalize( lightToPosition );
			float depth = textureCube( shadowMap, bd3D ).r;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				depth = 1.0 - depth;
			#endif
			shadow = step( dp, depth );
		}
		return mix( 1.0, shadow, shadowIntensity );
	}
	#endif
	#endif
#endif`,fS=`#if NUM_SPOT_LIGHT_COORDS > 0
	uniform mat4 spotLightMatrix[ NUM_SPOT_LIGHT_COORDS ];
	varying vec4 vSpotLightCoord[ NUM_SPOT_LIGHT_COORDS ];
#endif
#ifdef USE_SHADOWMAP
	#if NUM_SUN_LIGHT_SHADOWS > 0
		varying vec4 vSunShadowWorldPosition;
		varying vec3 vSunShadowWorldNormal;
	#endif
	#if NUM_DIR_LIGHT_SHADOWS > 0
		uniform mat4 directionalShadowMatrix[ NUM_DIR_LIGHT_SHADOWS ];
		varying vec4 vDirectionalShadowCoord[ NUM_DIR_LIGHT_SHADOWS ];
		struct DirectionalLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform DirectionalLightShadow directionalLightShadows[ NUM_DIR_LIGHT_SHADOWS ];
	#endif
	#if NUM_SPOT_LIGHT_SHADOWS > 0
		struct SpotLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform SpotLightShadow spotLightShadows[ NUM_SPOT_LIGHT_SHADOWS ];
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
		uniform mat4 pointShadowMatrix[ NUM_POINT_LIGHT_SHADOWS ];
		varying vec4 vPointShadowCoord[ NUM_POINT_LIGHT_SHADOWS ];
		struct PointLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
			float shadowCameraNear;
			float shadowCameraFar;
		};
		uniform PointLightShadow pointLightShadows[ NUM_POINT_LIGHT_SHADOWS ];
	#endif
#endif`,pS=`#if ( defined( USE_SHADOWMAP ) && ( NUM_DIR_LIGHT_SHADOWS > 0 || NUM_SUN_LIGHT_SHADOWS > 0 || NUM_POINT_LIGHT_SHADOWS > 0 ) ) || ( NUM_SPOT_LIGHT_COORDS > 0 )
	#ifdef HAS_NORMAL
		vec3 shadowWorldNormal = transformNormalByInverseViewMatrix( transformedNormal, viewMatrix );
	#else
		vec3 shadowWorldNormal = vec3( 0.0 );
	#endif
	vec4 shadowWorldPosition;
#endif
#if defined( USE_SHADOWMAP )
	#if NUM_SUN_LIGHT_SHADOWS > 0
		vSunShadowWorldPosition = vec4( worldPosition.xyz, - mvPosition.z );
		vSunShadowWorldNormal = shadowWorldNormal;
	#endif
	#if NUM_DIR_LIGHT_SHADOWS > 0
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_DIR_LIGHT_SHADOWS; i ++ ) {
			shadowWorldPosition = worldPosition + vec4( shadowWorldNormal * directionalLightShadows[ i ].shadowNormalBias, 0 );
			vDirectionalShadowCoord[ i ] = directionalShadowMatrix[ i ] * shadowWorldPosition;
		}
		#pragma unroll_loop_end
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_POINT_LIGHT_SHADOWS; i ++ ) {
			shadowWorldPosition = worldPosition + vec4( shadowWorldNormal * pointLightShadows[ i ].shadowNormalBias, 0 );
			vPointShadowCoord[ i ] = pointShadowMatrix[ i ] * shadowWorldPosition;
		}
		#pragma unroll_loop_end
	#endif
#endif
#if NUM_SPOT_LIGHT_COORDS > 0
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SPOT_LIGHT_COORDS; i ++ ) {
		shadowWorldPosition = worldPosition;
		#if ( defined( USE_SHADOWMAP ) && UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS )
			shadowWorldPosition.xyz += shadowWorldNormal * spotLightShadows[ i ].shadowNormalBias;
		#endif
		vSpotLightCoord[ i ] = spotLightMatrix[ i ] * shadowWorldPosition;
	}
	#pragma unroll_loop_end
#endif`,mS=`float getShadowMask() {
	float shadow = 1.0;
	#ifdef USE_SHADOWMAP
	#if NUM_SUN_LIGHT_SHADOWS > 0
	SunLightShadow sunLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SUN_LIGHT_SHADOWS; i ++ ) {
		sunLight = sunLightShadows[ i ];
		shadow *= receiveShadow ? getSunShadow( sunShadowMap[ i ], sunLight, UNROLLED_LOOP_INDEX ) : 1.0;
	}
	#pragma unroll_loop_end
	#endif
	#if NUM_DIR_LIGHT_SHADOWS > 0
	DirectionalLightShadow directionalLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_DIR_LIGHT_SHADOWS; i ++ ) {
		directionalLight = directionalLightShadows[ i ];
		shadow *= receiveShadow ? getShadow( directionalShadowMap[ i ], directionalLight.shadowMapSize, directionalLight.shadowIntensity, directionalLight.shadowBias, directionalLight.shadowRadius, vDirectionalShadowCoord[ i ] ) : 1.0;
	}
	#pragma unroll_loop_end
	#endif
	#if NUM_SPOT_LIGHT_SHADOWS > 0
	SpotLightShadow spotLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SPOT_LIGHT_SHADOWS; i ++ ) {
		spotLight = spotLightShadows[ i ];
		shadow *= receiveShadow ? getShadow( spotShadowMap[ i ], spotLight.shadowMapSize, spotLight.shadowIntensity, spotLight.shadowBias, spotLight.shadowRadius, vSpotLightCoord[ i ] ) : 1.0;
	}
	#pragma unroll_loop_end
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0 && ( defined( SHADOWMAP_TYPE_PCF ) || defined( SHADOWMAP_TYPE_BASIC ) )
	PointLightShadow pointLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_POINT_LIGHT_SHADOWS; i ++ ) {
		pointLight = pointLightShadows[ i ];
		shadow *= receiveShadow ? getPointShadow( pointShadowMap[ i ], pointLight.shadowMapSize, pointLight.shadowIntensity, pointLight.shadowBias, pointLight.shadowRadius, vPointShadowCoord[ i ], pointLight.shadowCameraNear, pointLight.shadowCameraFar ) : 1.0;
	}
	#pragma unroll_loop_end
	#endif
	#endif
	return shadow;
}`,gS=`#ifdef USE_SKINNING
	mat4 boneMatX = getBoneMatrix( skinIndex.x );
	mat4 boneMatY = getBoneMatrix( skinIndex.y );
	mat4 boneMatZ = getBoneMatrix( skinIndex.z );
	mat4 boneMatW = getBoneMatrix( skinIndex.w );
#endif`,vS=`#ifdef USE_SKINNING
	uniform mat4 bindMatrix;
	uniform mat4 bindMatrixInverse;
	uniform highp sampler2D boneTexture;
	mat4 getBoneMatrix( const in float i ) {
		int size = textureSize( boneTexture, 0 ).x;
		int j = int( i ) * 4;
		int x = j % size;
		int y = j / size;
		vec4 v1 = texelFetch( boneTexture, ivec2( x, y ), 0 );
		vec4 v2 = texelFetch( boneTexture, ivec2( x + 1, y ), 0 );
		vec4 v3 = texelFetch( boneTexture, ivec2( x + 2, y ), 0 );
		vec4 v4 = texelFetch( boneTexture, ivec2( x + 3, y ), 0 );
		return mat4( v1, v2, v3, v4 );
	}
#endif`,_S=`#ifdef USE_SKINNING
	vec4 skinVertex = bindMatrix * vec4( transformed, 1.0 );
	vec4 skinned = vec4( 0.0 );
	skinned += boneMatX * skinVertex * skinWeight.x;
	skinned += boneMatY * skinVertex * skinWeight.y;
	skinned += boneMatZ * skinVertex * skinWeight.z;
	skinned += boneMatW * skinVertex * skinWeight.w;
	transformed = ( bindMatrixInverse * skinned ).xyz;
#endif`,yS=`#ifdef USE_SKINNING
	mat4 skinMatrix = mat4( 0.0 );
	skinMatrix += skinWeight.x * boneMatX;
	skinMatrix += skinWeight.y * boneMatY;
	skinMatrix += skinWeight.z * boneMatZ;
	skinMatrix += skinWeight.w * boneMatW;
	skinMatrix = bindMatrixInverse * skinMatrix * bindMatrix;
	objectNormal = vec4( skinMatrix * vec4( objectNormal, 0.0 ) ).xyz;
	#ifdef USE_TANGENT
		objectTangent = vec4( skinMatrix * vec4( objectTangent, 0.0 ) ).xyz;
	#endif
#endif`,xS=`float specularStrength;
#ifdef USE_SPECULARMAP
	vec4 texelSpecular = texture2D( specularMap, vSpecularMapUv );
	specularStrength = texelSpecular.r;
#else
	specularStrength = 1.0;
#endif`,bS=`#ifdef USE_SPECULARMAP
	uniform sampler2D specularMap;
#endif`,wS=`#if defined( TONE_MAPPING )
	gl_FragColor.rgb = toneMapping( gl_FragColor.rgb );
#endif`,MS=`#ifndef saturate
#define saturate( a ) clamp( a, 0.0, 1.0 )
#endif
uniform float toneMappingExposure;
vec3 LinearToneMapping( vec3 color ) {
	return saturate( toneMappingExposure * color );
}
vec3 ReinhardToneMapping( vec3 color ) {
	color *= toneMappingExposure;
	return saturate( color / ( vec3( 1.0 ) + color ) );
}
vec3 CineonToneMapping( vec3 color ) {
	color *= toneMappingExposure;
	color = max( vec3( 0.0 ), color - 0.004 );
	return pow( ( color * ( 6.2 * color + 0.5 ) ) / ( color * ( 6.2 * color + 1.7 ) + 0.06 ), vec3( 2.2 ) );
}
vec3 RRTAndODTFit( vec3 v ) {
	vec3 a = v * ( v + 0.0245786 ) - 0.000090537;
	vec3 b = v * ( 0.983729 * v + 0.4329510 ) + 0.238081;
	return a / b;
}
vec3 ACESFilmicToneMapping( vec3 color ) {
	const mat3 ACESInputMat = mat3(
		vec3( 0.59719, 0.07600, 0.02840 ),		vec3( 0.35458, 0.90834, 0.13383 ),
		vec3( 0.04823, 0.01566, 0.83777 )
	);
	const mat3 ACESOutputMat = mat3(
		vec3(  1.60475, -0.10208, -0.00327 ),		vec3( -0.53108,  1.10813, -0.07276 ),
		vec3( -0.07367, -0.00605,  1.07602 )
	);
	color *= toneMappingExposure / 0.6;
	color = ACESInputMat * color;
	color = RRTAndODTFit( color );
	color = ACESOutputMat * color;
	return saturate( color );
}
const mat3 LINEAR_REC2020_TO_LINEAR_SRGB = mat3(
	vec3( 1.6605, - 0.1246, - 0.0182 ),
	vec3( - 0.5876, 1.1329, - 0.1006 ),
	vec3( - 0.0728, - 0.0083, 1.1187 )
);
const mat3 LINEAR_SRGB_TO_LINEAR_REC2020 = mat3(
	vec3( 0.6274, 0.0691, 0.0164 ),
	vec3( 0.3293, 0.9195, 0.0880 ),
	vec3( 0.0433, 0.0113, 0.8956 )
);
vec3 agxDefaultContrastApprox( vec3 x ) {
	vec3 x2 = x * x;
	vec3 x4 = x2 * x2;
	return + 15.5 * x4 * x2
		- 40.14 * x4 * x
		+ 31.96 * x4
		- 6.868 * x2 * x
		+ 0.4298 * x2
		+ 0.1191 * x
		- 0.00232;
}
vec3 AgXToneMapping( vec3 color ) {
	const mat3 AgXInsetMatrix = mat3(
		vec3( 0.856627153315983, 0.137318972929847, 0.11189821299995 ),
		vec3( 0.0951212405381588, 0.761241990602591, 0.0767994186031903 ),
		vec3( 0.0482516061458583, 0.101439036467562, 0.811302368396859 )
	);
	const mat3 AgXOutsetMatrix = mat3(
		vec3( 1.1271005818144368, - 0.1413297634984383, - 0.14132976349843826 ),
		vec3( - 0.11060664309660323, 1.157823702216272, - 0.11060664309660294 ),
		vec3( - 0.016493938717834573, - 0.016493938717834257, 1.2519364065950405 )
	);
	const float AgxMinEv = - 12.47393;	const float AgxMaxEv = 4.026069;
	color *= toneMappingExposure;
	color = LINEAR_SRGB_TO_LINEAR_REC2020 * color;
	color = AgXInsetMatrix * color;
	color = max( color, 1e-10 );	color = log2( color );
	color = ( color - AgxMinEv ) / ( AgxMaxEv - AgxMinEv );
	color = clamp( color, 0.0, 1.0 );
	color = agxDefaultContrastApprox( color );
	color = AgXOutsetMatrix * color;
	color = pow( max( vec3( 0.0 ), color ), vec3( 2.2 ) );
	color = LINEAR_REC2020_TO_LINEAR_SRGB * color;
	color = clamp( color, 0.0, 1.0 );
	return color;
}
vec3 NeutralToneMapping( vec3 color ) {
	const float StartCompression = 0.8 - 0.04;
	const float Desaturation = 0.15;
	color *= toneMappingExposure;
	float x = min( color.r, min( color.g, color.b ) );
	float offset = x < 0.08 ? x - 6.25 * x * x : 0.04;
	color -= offset;
	float peak = max( color.r, max( color.g, color.b ) );
	if ( peak < StartCompression ) return color;
	float d = 1. - StartCompression;
	float newPeak = 1. - d * d / ( peak + d - StartCompression );
	color *= newPeak / peak;
	float g = 1. - 1. / ( Desaturation * ( peak - newPeak ) + 1. );
	return mix( color, vec3( newPeak ), g );
}
vec3 CustomToneMapping( vec3 color ) { return color; }`,SS=`#ifdef USE_TRANSMISSION
	material.transmission = transmission;
	material.transmissionAlpha = 1.0;
	material.thickness = thickness;
	material.attenuationDistance = attenuationDistance;
	material.attenuationColor = attenuationColor;
	#ifdef USE_TRANSMISSIONMAP
		material.transmission *= texture2D( transmissionMap, vTransmissionMapUv ).r;
	#endif
	#ifdef USE_THICKNESSMAP
		material.thickness *= texture2D( thicknessMap, vThicknessMapUv ).g;
	#endif
	vec3 pos = vWorldPosition;
	vec3 v = normalize( cameraPosition - pos );
	vec3 n = transformNormalByInverseViewMatrix( normal, viewMatrix );
	vec4 transmitted = getIBLVolumeRefraction(
		n, v, material.roughness, material.diffuseContribution, material.specularColorBlended, material.specularF90,
		pos, modelMatrix, viewMatrix, projectionMatrix, material.dispersion, material.ior, material.thickness,
		material.attenuationColor, material.attenuationDistance );
	material.transmissionAlpha = mix( material.transmissionAlpha, transmitted.a, material.transmission );
	totalDiffuse = mix( totalDiffuse, transmitted.rgb, material.transmission );
#endif`,TS=`#ifdef USE_TRANSMISSION
	uniform float transmission;
	uniform float thickness;
	uniform float attenuationDistance;
	uniform vec3 attenuationColor;
	#ifdef USE_TRANSMISSIONMAP
		uniform sampler2D transmissionMap;
	#endif
	#ifdef USE_THICKNESSMAP
		uniform sampler2D thicknessMap;
	#endif
	uniform vec2 transmissionSamplerSize;
	uniform sampler2D transmissionSamplerMap;
	uniform mat4 modelMatrix;
	uniform mat4 projectionMatrix;
	varying vec3 vWorldPosition;
	float w0( float a ) {
		return ( 1.0 / 6.0 ) * ( a * ( a * ( - a + 3.0 ) - 3.0 ) + 1.0 );
	}
	float w1( float a ) {
		return ( 1.0 / 6.0 ) * ( a *  a * ( 3.0 * a - 6.0 ) + 4.0 );
	}
	float w2( float a ){
		return ( 1.0 / 6.0 ) * ( a * ( a * ( - 3.0 * a + 3.0 ) + 3.0 ) + 1.0 );
	}
	float w3( float a ) {
		return ( 1.0 / 6.0 ) * ( a * a * a );
	}
	float g0( float a ) {
		return w0( a ) + w1( a );
	}
	float g1( float a ) {
		return w2( a ) + w3( a );
	}
	float h0( float a ) {
		return - 1.0 + w1( a ) / ( w0( a ) + w1( a ) );
	}
	float h1( float a ) {
		return 1.0 + w3( a ) / ( w2( a ) + w3( a ) );
	}
	vec4 bicubic( sampler2D tex, vec2 uv, vec4 texelSize, float lod ) {
		uv = uv * texelSize.zw + 0.5;
		vec2 iuv = floor( uv );
		vec2 fuv = fract( uv );
		float g0x = g0( fuv.x );
		float g1x = g1( fuv.x );
		float h0x = h0( fuv.x );
		float h1x = h1( fuv.x );
		float h0y = h0( fuv.y );
		float h1y = h1( fuv.y );
		vec2 p0 = ( vec2( iuv.x + h0x, iuv.y + h0y ) - 0.5 ) * texelSize.xy;
		vec2 p1 = ( vec2( iuv.x + h1x, iuv.y + h0y ) - 0.5 ) * texelSize.xy;
		vec2 p2 = ( vec2( iuv.x + h0x, iuv.y + h1y ) - 0.5 ) * texelSize.xy;
		vec2 p3 = ( vec2( iuv.x + h1x, iuv.y + h1y ) - 0.5 ) * texelSize.xy;
		return g0( fuv.y ) * ( g0x * textureLod( tex, p0, lod ) + g1x * textureLod( tex, p1, lod ) ) +
			g1( fuv.y ) * ( g0x * textureLod( tex, p2, lod ) + g1x * textureLod( tex, p3, lod ) );
	}
	vec4 textureBicubic( sampler2D sampler, vec2 uv, float lod ) {
		vec2 fLodSize = vec2( textureSize( sampler, int( lod ) ) );
		vec2 cLodSize = vec2( textureSize( sampler, int( lod + 1.0 ) ) );
		vec2 fLodSizeInv = 1.0 / fLodSize;
		vec2 cLodSizeInv = 1.0 / cLodSize;
		vec4 fSample = bicubic( sampler, uv, vec4( fLodSizeInv, fLodSize ), floor( lod ) );
		vec4 cSample = bicubic( sampler, uv, vec4( cLodSizeInv, cLodSize ), ceil( lod ) );
		return mix( fSample, cSample, fract( lod ) );
	}
	vec3 getVolumeTransmissionRay( const in vec3 n, const in vec3 v, const in float thickness, const in float ior, const in mat4 modelMatrix ) {
		vec3 refractionVector = refract( - v, normalize( n ), 1.0 / ior );
		vec3 modelScale;
		modelScale.x = length( vec3( modelMatrix[ 0 ].xyz ) );
		modelScale.y = length( vec3( modelMatrix[ 1 ].xyz ) );
		modelScale.z = length( vec3( modelMatrix[ 2 ].xyz ) );
		return normalize( refractionVector ) * thickness * modelScale;
	}
	float applyIorToRoughness( const in float roughness, const in float ior ) {
		return roughness * clamp( ior * 2.0 - 2.0, 0.0, 1.0 );
	}
	vec4 getTransmissionSample( const in vec2 fragCoord, const in float roughness, const in float ior ) {
		float lod = log2( transmissionSamplerSize.x ) * applyIorToRoughness( roughness, ior );
		return textureBicubic( transmissionSamplerMap, fragCoord.xy, lod );
	}
	vec3 volumeAttenuation( const in float transmissionDistance, const in vec3 attenuationColor, const in float attenuationDistance ) {
		if ( isinf( attenuationDistance ) ) {
			return vec3( 1.0 );
		} else {
			vec3 attenuationCoefficient = -log( attenuationColor ) / attenuationDistance;
			vec3 transmittance = exp( - attenuationCoefficient * transmissionDistance );			return transmittance;
		}
	}
	vec4 getIBLVolumeRefraction( const in vec3 n, const in vec3 v, const in float roughness, const in vec3 diffuseColor,
		const in vec3 specularColor, const in float specularF90, const in vec3 position, const in mat4 modelMatrix,
		const in mat4 viewMatrix, const in mat4 projMatrix, const in float dispersion, const in float ior, const in float thickness,
		const in vec3 attenuationColor, const in float attenuationDistance ) {
		vec4 transmittedLight;
		vec3 transmittance;
		#ifdef USE_DISPERSION
			float halfSpread = ( ior - 1.0 ) * 0.025 * dispersion;
			vec3 iors = vec3( ior - halfSpread, ior, ior + halfSpread );
			for ( int i = 0; i < 3; i ++ ) {
				vec3 transmissionRay = getVolumeTransmissionRay( n, v, thickness, iors[ i ], modelMatrix );
				vec3 refractedRayExit = position + transmissionRay;
				vec4 ndcPos = projMatrix * viewMatrix * vec4( refractedRayExit, 1.0 );
				vec2 refractionCoords = ndcPos.xy / ndcPos.w;
				refractionCoords += 1.0;
				refractionCoords /= 2.0;
				vec4 transmissionSample = getTransmissionSample( refractionCoords, roughness, iors[ i ] );
				transmittedLight[ i ] = transmissionSample[ i ];
				transmittedLight.a += transmissionSample.a;
				transmittance[ i ] = diffuseColor[ i ] * volumeAttenuation( length( transmissionRay ), attenuationColor, attenuationDistance )[ i ];
			}
			transmittedLight.a /= 3.0;
		#else
			vec3 transmissionRay = getVolumeTransmissionRay( n, v, thickness, ior, modelMatrix );
			vec3 refractedRayExit = position + transmissionRay;
			vec4 ndcPos = projMatrix * viewMatrix * vec4( refractedRayExit, 1.0 );
			vec2 refractionCoords = ndcPos.xy / ndcPos.w;
			refractionCoords += 1.0;
			refractionCoords /= 2.0;
			transmittedLight = getTransmissionSample( refractionCoords, roughness, ior );
			transmittance = diffuseColor * volumeAttenuation( length( transmissionRay ), attenuationColor, attenuationDistance );
		#endif
		vec3 attenuatedColor = transmittance * transmittedLight.rgb;
		vec3 F = EnvironmentBRDF( n, v, specularColor, specularF90, roughness );
		float transmittanceFactor = ( transmittance.r + transmittance.g + transmittance.b ) / 3.0;
		return vec4( ( 1.0 - F ) * attenuatedColor, 1.0 - ( 1.0 - transmittedLight.a ) * transmittanceFactor );
	}
#endif`,AS=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
	varying vec2 vUv;
#endif
#ifdef USE_MAP
	varying vec2 vMapUv;
#endif
#ifdef USE_ALPHAMAP
	varying vec2 vAlphaMapUv;
#endif
#ifdef USE_LIGHTMAP
	varying vec2 vLightMapUv;
#endif
#ifdef USE_AOMAP
	varying vec2 vAoMapUv;
#endif
#ifdef USE_BUMPMAP
	varying vec2 vBumpMapUv;
#endif
#ifdef USE_NORMALMAP
	varying vec2 vNormalMapUv;
#endif
#ifdef USE_EMISSIVEMAP
	varying vec2 vEmissiveMapUv;
#endif
#ifdef USE_METALNESSMAP
	varying vec2 vMetalnessMapUv;
#endif
#ifdef USE_ROUGHNESSMAP
	varying vec2 vRoughnessMapUv;
#endif
#ifdef USE_DIFFUSE_ROUGHNESSMAP
	varying vec2 vDiffuseRoughnessMapUv;
#endif
#ifdef USE_ANISOTROPYMAP
	varying vec2 vAnisotropyMapUv;
#endif
#ifdef USE_CLEARCOATMAP
	varying vec2 vClearcoatMapUv;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	varying vec2 vClearcoatNormalMapUv;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	varying vec2 vClearcoatRoughnessMapUv;
#endif
#ifdef USE_IRIDESCENCEMAP
	varying vec2 vIridescenceMapUv;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	varying vec2 vIridescenceThicknessMapUv;
#endif
#ifdef USE_SHEEN_COLORMAP
	varying vec2 vSheenColorMapUv;
#endif
#ifdef USE_SHEEN_ROUGHNESSMAP
	varying vec2 vSheenRoughnessMapUv;
#endif
#ifdef USE_SPECULARMAP
	varying vec2 vSpecularMapUv;
#endif
#ifdef USE_SPECULAR_COLORMAP
	varying vec2 vSpecularColorMapUv;
#endif
#ifdef USE_SPECULAR_INTENSITYMAP
	varying vec2 vSpecularIntensityMapUv;
#endif
#ifdef USE_TRANSMISSIONMAP
	uniform mat3 transmissionMapTransform;
	varying vec2 vTransmissionMapUv;
#endif
#ifdef USE_THICKNESSMAP
	uniform mat3 thicknessMapTransform;
	varying vec2 vThicknessMapUv;
#endif`,ES=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
	varying vec2 vUv;
#endif
#ifdef USE_MAP
	uniform mat3 mapTransform;
	varying vec2 vMapUv;
#endif
#ifdef USE_ALPHAMAP
	uniform mat3 alphaMapTransform;
	varying vec2 vAlphaMapUv;
#endif
#ifdef USE_LIGHTMAP
	uniform mat3 lightMapTransform;
	varying vec2 vLightMapUv;
#endif
#ifdef USE_AOMAP
	uniform mat3 aoMapTransform;
	varying vec2 vAoMapUv;
#endif
#ifdef USE_BUMPMAP
	uniform mat3 bumpMapTransform;
	varying vec2 vBumpMapUv;
#endif
#ifdef USE_NORMALMAP
	uniform mat3 normalMapTransform;
	varying vec2 vNormalMapUv;
#endif
#ifdef USE_DISPLACEMENTMAP
	uniform mat3 displacementMapTransform;
	varying vec2 vDisplacementMapUv;
#endif
#ifdef USE_EMISSIVEMAP
	uniform mat3 emissiveMapTransform;
	varying vec2 vEmissiveMapUv;
#endif
#ifdef USE_METALNESSMAP
	uniform mat3 metalnessMapTransform;
	varying vec2 vMetalnessMapUv;
#endif
#ifdef USE_ROUGHNESSMAP
	uniform mat3 roughnessMapTransform;
	varying vec2 vRoughnessMapUv;
#endif
#ifdef USE_DIFFUSE_ROUGHNESSMAP
	uniform mat3 diffuseRoughnessMapTransform;
	varying vec2 vDiffuseRoughnessMapUv;
#endif
#ifdef USE_ANISOTROPYMAP
	uniform mat3 anisotropyMapTransform;
	varying vec2 vAnisotropyMapUv;
#endif
#ifdef USE_CLEARCOATMAP
	uniform mat3 clearcoatMapTransform;
	varying vec2 vClearcoatMapUv;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	uniform mat3 clearcoatNormalMapTransform;
	varying vec2 vClearcoatNormalMapUv;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	uniform mat3 clearcoatRoughnessMapTransform;
	varying vec2 vClearcoatRoughnessMapUv;
#endif
#ifdef USE_SHEEN_COLORMAP
	uniform mat3 sheenColorMapTransform;
	varying vec2 vSheenColorMapUv;
#endif
#ifdef USE_SHEEN_ROUGHNESSMAP
	uniform mat3 sheenRoughnessMapTransform;
	varying vec2 vSheenRoughnessMapUv;
#endif
#ifdef USE_IRIDESCENCEMAP
	uniform mat3 iridescenceMapTransform;
	varying vec2 vIridescenceMapUv;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	uniform mat3 iridescenceThicknessMapTransform;
	varying vec2 vIridescenceThicknessMapUv;
#endif
#ifdef USE_SPECULARMAP
	uniform mat3 specularMapTransform;
	varying vec2 vSpecularMapUv;
#endif
#ifdef USE_SPECULAR_COLORMAP
	uniform mat3 specularColorMapTransform;
	varying vec2 vSpecularColorMapUv;
#endif
#ifdef USE_SPECULAR_INTENSITYMAP
	uniform mat3 specularIntensityMapTransform;
	varying vec2 vSpecularIntensityMapUv;
#endif
#ifdef USE_TRANSMISSIONMAP
	uniform mat3 transmissionMapTransform;
	varying vec2 vTransmissionMapUv;
#endif
#ifdef USE_THICKNESSMAP
	uniform mat3 thicknessMapTransform;
	varying vec2 vThicknessMapUv;
#endif`,CS=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
	vUv = vec3( uv, 1 ).xy;
#endif
#ifdef USE_MAP
	vMapUv = ( mapTransform * vec3( MAP_UV, 1 ) ).xy;
#endif
#ifdef USE_ALPHAMAP
	vAlphaMapUv = ( alphaMapTransform * vec3( ALPHAMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_LIGHTMAP
	vLightMapUv = ( lightMapTransform * vec3( LIGHTMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_AOMAP
	vAoMapUv = ( aoMapTransform * vec3( AOMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_BUMPMAP
	vBumpMapUv = ( bumpMapTransform * vec3( BUMPMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_NORMALMAP
	vNormalMapUv = ( normalMapTransform * vec3( NORMALMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_DISPLACEMENTMAP
	vDisplacementMapUv = ( displacementMapTransform * vec3( DISPLACEMENTMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_EMISSIVEMAP
	vEmissiveMapUv = ( emissiveMapTransform * vec3( EMISSIVEMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_METALNESSMAP
	vMetalnessMapUv = ( metalnessMapTransform * vec3( METALNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_ROUGHNESSMAP
	vRoughnessMapUv = ( roughnessMapTransform * vec3( ROUGHNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_DIFFUSE_ROUGHNESSMAP
	vDiffuseRoughnessMapUv = ( diffuseRoughnessMapTransform * vec3( DIFFUSE_ROUGHNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_ANISOTROPYMAP
	vAnisotropyMapUv = ( anisotropyMapTransform * vec3( ANISOTROPYMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_CLEARCOATMAP
	vClearcoatMapUv = ( clearcoatMapTransform * vec3( CLEARCOATMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	vClearcoatNormalMapUv = ( clearcoatNormalMapTransform * vec3( CLEARCOAT_NORMALMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	vClearcoatRoughnessMapUv = ( clearcoatRoughnessMapTransform * vec3( CLEARCOAT_ROUGHNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_IRIDESCENCEMAP
	vIridescenceMapUv = ( iridescenceMapTransform * vec3( IRIDESCENCEMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	vIridescenceThicknessMapUv = ( iridescenceThicknessMapTransform * vec3( IRIDESCENCE_THICKNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SHEEN_COLORMAP
	vSheenColorMapUv = ( sheenColorMapTransform * vec3( SHEEN_COLORMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SHEEN_ROUGHNESSMAP
	vSheenRoughnessMapUv = ( sheenRoughnessMapTransform * vec3( SHEEN_ROUGHNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SPECULARMAP
	vSpecularMapUv = ( specularMapTransform * vec3( SPECULARMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SPECULAR_COLORMAP
	vSpecularColorMapUv = ( specularColorMapTransform * vec3( SPECULAR_COLORMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SPECULAR_INTENSITYMAP
	vSpecularIntensityMapUv = ( specularIntensityMapTransform * vec3( SPECULAR_INTENSITYMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_TRANSMISSIONMAP
	vTransmissionMapUv = ( transmissionMapTransform * vec3( TRANSMISSIONMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_THICKNESSMAP
	vThicknessMapUv = ( thicknessMapTransform * vec3( THICKNESSMAP_UV, 1 ) ).xy;
#endif`,RS=`#if defined( USE_ENVMAP ) || defined( DISTANCE ) || defined ( USE_SHADOWMAP ) || defined ( USE_TRANSMISSION ) || NUM_SPOT_LIGHT_COORDS > 0
	vec4 worldPosition = vec4( transformed, 1.0 );
	#ifdef USE_BATCHING
		worldPosition = batchingMatrix * worldPosition;
	#endif
	#ifdef USE_INSTANCING
		worldPosition = instanceMatrix * worldPosition;
	#endif
	worldPosition = modelMatrix * worldPosition;
#endif`,PS=`varying vec2 vUv;
uniform mat3 uvTransform;
void main() {
	vUv = ( uvTransform * vec3( uv, 1 ) ).xy;
	gl_Position = vec4( position.xy, 1.0, 1.0 );
}`,IS=`uniform sampler2D t2D;
uniform float backgroundIntensity;
varying vec2 vUv;
void main() {
	vec4 texColor = texture2D( t2D, vUv );
	#ifdef DECODE_VIDEO_TEXTURE
		texColor = vec4( mix( pow( texColor.rgb * 0.9478672986 + vec3( 0.0521327014 ), vec3( 2.4 ) ), texColor.rgb * 0.0773993808, vec3( lessThanEqual( texColor.rgb, vec3( 0.04045 ) ) ) ), texColor.w );
	#endif
	texColor.rgb *= backgroundIntensity;
	gl_FragColor = texColor;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,DS=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,LS=`uniform float backgroundBlurriness;
uniform float backgroundIntensity;
uniform mat3 backgroundRotation;
varying vec3 vWorldDirection;
#include <envmap_common_pars_fragment>
void main() {
	#ifdef ENVMAP_TYPE_PMREM
		vec4 texColor = textureLod( envMap, backgroundRotation * vWorldDirection, roughnessToMip( backgroundBlurriness ) );
	#else
		vec4 texColor = textureCube( envMap, backgroundRotation * vWorldDirection );
	#endif
	texColor.rgb *= backgroundIntensity;
	gl_FragColor = texColor;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,NS=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,US=`uniform samplerCube tCube;
uniform float tFlip;
uniform float opacity;
varying vec3 vWorldDirection;
void main() {
	vec4 texColor = textureCube( tCube, vec3( tFlip * vWorldDirection.x, vWorldDirection.yz ) );
	gl_FragColor = texColor;
	gl_FragColor.a *= opacity;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,OS=`#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
varying vec2 vHighPrecisionZW;
void main() {
	#include <uv_vertex>
	#include <batching_vertex>
	#include <skinbase_vertex>
	#include <morphinstance_vertex>
	#ifdef USE_DISPLACEMENTMAP
		#include <beginnormal_vertex>
		#include <morphnormal_vertex>
		#include <skinnormal_vertex>
	#endif
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vHighPrecisionZW = gl_Position.zw;
}`,kS=`#if DEPTH_PACKING == 3200
	uniform float opacity;
#endif
#include <common>
#include <packing>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
varying vec2 vHighPrecisionZW;
void main() {
	vec4 diffuseColor = vec4( 1.0 );
	#include <clipping_planes_fragment>
	#if DEPTH_PACKING == 3200
		diffuseColor.a = opacity;
	#endif
	#include <map_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <logdepthbuf_fragment>
	#ifdef USE_REVERSED_DEPTH_BUFFER
		float fragCoordZ = vHighPrecisionZW[ 0 ] / vHighPrecisionZW[ 1 ];
	#else
		float fragCoordZ = 0.5 * vHighPrecisionZW[ 0 ] / vHighPrecisionZW[ 1 ] + 0.5;
	#endif
	#if DEPTH_PACKING == 3200
		gl_FragColor = vec4( vec3( 1.0 - fragCoordZ ), opacity );
	#elif DEPTH_PACKING == 3201
		gl_FragColor = packDepthToRGBA( fragCoordZ );
	#elif DEPTH_PACKING == 3202
		gl_FragColor = vec4( packDepthToRGB( fragCoordZ ), 1.0 );
	#elif DEPTH_PACKING == 3203
		gl_FragColor = vec4( packDepthToRG( fragCoordZ ), 0.0, 1.0 );
	#endif
}`,FS=`#define DISTANCE
varying vec3 vWorldPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <batching_vertex>
	#include <skinbase_vertex>
	#include <morphinstance_vertex>
	#ifdef USE_DISPLACEMENTMAP
		#include <beginnormal_vertex>
		#include <morphnormal_vertex>
		#include <skinnormal_vertex>
	#endif
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <worldpos_vertex>
	#include <clipping_planes_vertex>
	vWorldPosition = worldPosition.xyz;
}`,BS=`#define DISTANCE
uniform vec3 referencePosition;
uniform float nearDistance;
uniform float farDistance;
varying vec3 vWorldPosition;
#include <common>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( 1.0 );
	#include <clipping_planes_fragment>
	#include <map_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	float dist = length( vWorldPosition - referencePosition );
	dist = ( dist - nearDistance ) / ( farDistance - nearDistance );
	dist = saturate( dist );
	gl_FragColor = vec4( dist, 0.0, 0.0, 1.0 );
}`,zS=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
}`,VS=`uniform sampler2D tEquirect;
varying vec3 vWorldDirection;
#include <common>
void main() {
	vec3 direction = normalize( vWorldDirection );
	vec2 sampleUV = equirectUv( direction );
	gl_FragColor = texture2D( tEquirect, sampleUV );
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,GS=`uniform float scale;
attribute float lineDistance;
varying float vLineDistance;
#include <common>
#include <uv_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	vLineDistance = scale * lineDistance;
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <fog_vertex>
}`,HS=`uniform vec3 diffuse;
uniform float opacity;
uniform float dashSize;
uniform float totalSize;
varying float vLineDistance;
#include <common>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <fog_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	if ( mod( vLineDistance, totalSize ) > dashSize ) {
		discard;
	}
	vec3 outgoingLight = vec3( 0.0 );
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	outgoingLight = diffuseColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
}`,WS=`#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <envmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#if defined ( USE_ENVMAP ) || defined ( USE_SKINNING )
		#include <beginnormal_vertex>
		#include <morphnormal_vertex>
		#include <skinbase_vertex>
		#include <skinnormal_vertex>
		#include <defaultnormal_vertex>
	#endif
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <worldpos_vertex>
	#include <envmap_vertex>
	#include <fog_vertex>
}`,$S=`uniform vec3 diffuse;
uniform float opacity;
#ifndef FLAT_SHADED
	varying vec3 vNormal;
#endif
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_pars_fragment>
#include <fog_pars_fragment>
#include <specularmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <specularmap_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	#ifdef USE_LIGHTMAP
		vec4 lightMapTexel = texture2D( lightMap, vLightMapUv );
		reflectedLight.indirectDiffuse += lightMapTexel.rgb * lightMapIntensity * RECIPROCAL_PI;
	#else
		reflectedLight.indirectDiffuse += vec3( 1.0 );
	#endif
	#include <aomap_fragment>
	reflectedLight.indirectDiffuse *= diffuseColor.rgb;
	vec3 outgoingLight = reflectedLight.indirectDiffuse;
	#include <envmap_fragment>
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,XS=`#define LAMBERT
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <envmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <envmap_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,qS=`#define LAMBERT
uniform vec3 diffuse;
uniform vec3 emissive;
uniform float opacity;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_pars_fragment>
#include <envmap_physical_pars_fragment>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_lambert_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <specularmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <specularmap_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_lambert_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 outgoingLight = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse + totalEmissiveRadiance;
	#include <envmap_fragment>
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,YS=`#define MATCAP
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <color_pars_vertex>
#include <displacementmap_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <fog_vertex>
	vViewPosition = - mvPosition.xyz;
}`,ZS=`#define MATCAP
uniform vec3 diffuse;
uniform float opacity;
uniform sampler2D matcap;
varying vec3 vViewPosition;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <fog_pars_fragment>
#include <normal_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	vec3 viewDir = normalize( vViewPosition );
	vec3 x = normalize( vec3( viewDir.z, 0.0, - viewDir.x ) );
	vec3 y = cross( viewDir, x );
	vec2 uv = vec2( dot( x, normal ), dot( y, normal ) ) * 0.495 + 0.5;
	#ifdef USE_MATCAP
		vec4 matcapColor = texture2D( matcap, uv );
	#else
		vec4 matcapColor = vec4( vec3( mix( 0.2, 0.8, uv.y ) ), 1.0 );
	#endif
	vec3 outgoingLight = diffuseColor.rgb * matcapColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,JS=`#define NORMAL
#if defined( FLAT_SHADED ) || defined( USE_BUMPMAP ) || defined( USE_NORMALMAP_TANGENTSPACE )
	varying vec3 vViewPosition;
#endif
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphinstance_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
#if defined( FLAT_SHADED ) || defined( USE_BUMPMAP ) || defined( USE_NORMALMAP_TANGENTSPACE )
	vViewPosition = - mvPosition.xyz;
#endif
}`,KS=`#define NORMAL
uniform float opacity;
#if defined( FLAT_SHADED ) || defined( USE_BUMPMAP ) || defined( USE_NORMALMAP_TANGENTSPACE )
	varying vec3 vViewPosition;
#endif
#include <uv_pars_fragment>
#include <normal_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( 0.0, 0.0, 0.0, opacity );
	#include <clipping_planes_fragment>
	#include <logdepthbuf_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	gl_FragColor = vec4( normalize( normal ) * 0.5 + 0.5, diffuseColor.a );
	#ifdef OPAQUE
		gl_FragColor.a = 1.0;
	#endif
}`,jS=`#define PHONG
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <envmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphinstance_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <envmap_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,QS=`#define PHONG
uniform vec3 diffuse;
uniform vec3 emissive;
uniform vec3 specular;
uniform float shininess;
uniform float opacity;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_pars_fragment>
#include <envmap_physical_pars_fragment>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_phong_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <specularmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <specularmap_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_phong_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 outgoingLight = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse + reflectedLight.directSpecular + reflectedLight.indirectSpecular + totalEmissiveRadiance;
	#include <envmap_fragment>
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,t1=`#define STANDARD
varying vec3 vViewPosition;
#ifdef USE_TRANSMISSION
	varying vec3 vWorldPosition;
#endif
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
#ifdef USE_TRANSMISSION
	vWorldPosition = worldPosition.xyz;
#endif
}`,e1=`#define STANDARD
#ifdef PHYSICAL
	#define IOR
	#define USE_SPECULAR
#endif
uniform vec3 diffuse;
uniform vec3 emissive;
uniform float roughness;
uniform float metalness;
uniform float opacity;
#ifdef IOR
	uniform float ior;
#endif
#ifdef USE_SPECULAR
	uniform float specularIntensity;
	uniform vec3 specularColor;
	#ifdef USE_SPECULAR_COLORMAP
		uniform sampler2D specularColorMap;
	#endif
	#ifdef USE_SPECULAR_INTENSITYMAP
		uniform sampler2D specularIntensityMap;
	#endif
#endif
#ifdef USE_CLEARCOAT
	uniform float clearcoat;
	uniform float clearcoatRoughness;
#endif
#ifdef USE_DIFFUSE_ROUGHNESS
	uniform float diffuseRoughness;
	#ifdef USE_DIFFUSE_ROUGHNESSMAP
		uniform sampler2D diffuseRoughnessMap;
	#endif
#endif
#ifdef USE_DISPERSION
	uniform float dispersion;
#endif
#ifdef USE_RETROREFLECTION
	uniform float retroreflectivity;
#endif
#ifdef USE_IRIDESCENCE
	uniform float iridescence;
	uniform float iridescenceIOR;
	uniform float iridescenceThicknessMinimum;
	uniform float iridescenceThicknessMaximum;
#endif
#ifdef USE_SHEEN
	uniform vec3 sheenColor;
	uniform float sheenRoughness;
	#ifdef USE_SHEEN_COLORMAP
		uniform sampler2D sheenColorMap;
	#endif
	#ifdef USE_SHEEN_ROUGHNESSMAP
		uniform sampler2D sheenRoughnessMap;
	#endif
#endif
#ifdef USE_ANISOTROPY
	uniform vec2 anisotropyVector;
	#ifdef USE_ANISOTROPYMAP
		uniform sampler2D anisotropyMap;
	#endif
#endif
varying vec3 vViewPosition;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <iridescence_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_physical_pars_fragment>
#include <fog_pars_fragment>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_physical_pars_fragment>
#include <transmission_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <clearcoat_pars_fragment>
#include <iridescence_pars_fragment>
#include <roughnessmap_pars_fragment>
#include <metalnessmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <roughnessmap_fragment>
	#include <metalnessmap_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <clearcoat_normal_fragment_begin>
	#include <clearcoat_normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_physical_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 totalDiffuse = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse;
	vec3 totalSpecular = reflectedLight.directSpecular + reflectedLight.indirectSpecular;
	#include <transmission_fragment>
	vec3 outgoingLight = totalDiffuse + totalSpecular + totalEmissiveRadiance;
	#ifdef USE_SHEEN
 
		outgoingLight = outgoingLight + sheenSpecularDirect + sheenSpecularIndirect;
 
 	#endif
	#ifdef USE_CLEARCOAT
		float dotNVcc = saturate( dot( geometryClearcoatNormal, geometryViewDir ) );
		vec3 Fcc = F_Schlick( material.clearcoatF0, material.clearcoatF90, dotNVcc );
		outgoingLight = outgoingLight * ( 1.0 - material.clearcoat * Fcc ) + ( clearcoatSpecularDirect + clearcoatSpecularIndirect ) * material.clearcoat;
	#endif
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,n1=`#define TOON
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,i1=`#define TOON
uniform vec3 diffuse;
uniform vec3 emissive;
uniform float opacity;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <gradientmap_pars_fragment>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_toon_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_toon_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 outgoingLight = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse + totalEmissiveRadiance;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,s1=`uniform float size;
uniform float scale;
#include <common>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
#ifdef USE_POINTS_UV
	varying vec2 vUv;
	uniform mat3 uvTransform;
#endif
void main() {
	#ifdef USE_POINTS_UV
		vUv = ( uvTransform * vec3( uv, 1 ) ).xy;
	#endif
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <project_vertex>
	gl_PointSize = size;
	#ifdef USE_SIZEATTENUATION
		bool isPerspective = isPerspectiveMatrix( projectionMatrix );
		if ( isPerspective ) gl_PointSize *= ( scale / - mvPosition.z );
	#endif
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <worldpos_vertex>
	#include <fog_vertex>
}`,r1=`uniform vec3 diffuse;
uniform float opacity;
#include <common>
#include <color_pars_fragment>
#include <map_particle_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <fog_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	vec3 outgoingLight = vec3( 0.0 );
	#include <logdepthbuf_fragment>
	#include <map_particle_fragment>
	#include <color_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	outgoingLight = diffuseColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
}`,o1=`#include <common>
#include <batching_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <shadowmap_pars_vertex>
void main() {
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphinstance_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <worldpos_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,a1=`uniform vec3 color;
uniform float opacity;
#include <common>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <logdepthbuf_pars_fragment>
#include <shadowmap_pars_fragment>
#include <shadowmask_pars_fragment>
void main() {
	#include <logdepthbuf_fragment>
	gl_FragColor = vec4( color, opacity * ( 1.0 - getShadowMask() ) );
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
}`,l1=`uniform float rotation;
uniform vec2 center;
#include <common>
#include <uv_pars_vertex>
#include <fog_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	vec4 mvPosition = modelViewMatrix[ 3 ];
	vec2 scale = vec2( length( modelMatrix[ 0 ].xyz ), length( modelMatrix[ 1 ].xyz ) );
	#ifndef USE_SIZEATTENUATION
		bool isPerspective = isPerspectiveMatrix( projectionMatrix );
		if ( isPerspective ) scale *= - mvPosition.z;
	#endif
	vec2 alignedPosition = ( position.xy - ( center - vec2( 0.5 ) ) ) * scale;
	vec2 rotatedPosition;
	rotatedPosition.x = cos( rotation ) * alignedPosition.x - sin( rotation ) * alignedPosition.y;
	rotatedPosition.y = sin( rotation ) * alignedPosition.x + cos( rotation ) * alignedPosition.y;
	mvPosition.xy += rotatedPosition;
	gl_Position = projectionMatrix * mvPosition;
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <fog_vertex>
}`,c1=`uniform vec3 diffuse;
uniform float opacity;
#include <common>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <fog_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	vec3 outgoingLight = vec3( 0.0 );
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	outgoingLight = diffuseColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
}`,Jt={alphahash_fragment:Iw,alphahash_pars_fragment:Dw,alphamap_fragment:Lw,alphamap_pars_fragment:Nw,alphatest_fragment:Uw,alphatest_pars_fragment:Ow,aomap_fragment:kw,aomap_pars_fragment:Fw,batching_pars_vertex:Bw,batching_vertex:zw,begin_vertex:Vw,beginnormal_vertex:Gw,bsdfs:Hw,iridescence_fragment:Ww,bumpmap_pars_fragment:$w,clipping_planes_fragment:Xw,clipping_planes_pars_fragment:qw,clipping_planes_pars_vertex:Yw,clipping_planes_vertex:Zw,color_fragment:Jw,color_pars_fragment:Kw,color_pars_vertex:jw,color_vertex:Qw,common:tM,defaultnormal_vertex:eM,displacementmap_pars_vertex:nM,displacementmap_vertex:iM,emissivemap_fragment:sM,emissivemap_pars_fragment:rM,colorspace_fragment:oM,colorspace_pars_fragment:aM,envmap_fragment:lM,envmap_common_pars_fragment:cM,envmap_pars_fragment:uM,envmap_pars_vertex:hM,envmap_physical_pars_fragment:wM,envmap_vertex:dM,fog_vertex:fM,fog_pars_vertex:pM,fog_fragment:mM,fog_pars_fragment:gM,gradientmap_pars_fragment:vM,lightmap_pars_fragment:_M,lights_lambert_fragment:yM,lights_lambert_pars_fragment:xM,lights_pars_begin:bM,lights_toon_fragment:MM,lights_toon_pars_fragment:SM,lights_phong_fragment:TM,lights_phong_pars_fragment:AM,lights_physical_fragment:EM,lights_physical_pars_fragment:CM,lights_fragment_begin:RM,lights_fragment_maps:PM,lights_fragment_end:IM,lightprobes_pars_fragment:DM,logdepthbuf_fragment:LM,logdepthbuf_pars_fragment:NM,logdepthbuf_pars_vertex:UM,logdepthbuf_vertex:OM,map_fragment:kM,map_pars_fragment:FM,map_particle_fragment:BM,map_particle_pars_fragment:zM,metalnessmap_fragment:VM,metalnessmap_pars_fragment:GM,morphinstance_vertex:HM,morphcolor_vertex:WM,morphnormal_vertex:$M,morphtarget_pars_vertex:XM,morphtarget_vertex:qM,normal_fragment_begin:YM,normal_fragment_maps:ZM,normal_pars_fragment:JM,normal_pars_vertex:KM,normal_vertex:jM,normalmap_pars_fragment:QM,clearcoat_normal_fragment_begin:tS,clearcoat_normal_fragment_maps:eS,clearcoat_pars_fragment:nS,iridescence_pars_fragment:iS,opaque_fragment:sS,packing:rS,premultiplied_alpha_fragment:oS,project_vertex:aS,dithering_fragment:lS,dithering_pars_fragment:cS,roughnessmap_fragment:uS,roughnessmap_pars_fragment:hS,shadowmap_pars_fragment:dS,shadowmap_pars_vertex:fS,shadowmap_vertex:pS,shadowmask_pars_fragment:mS,skinbase_vertex:gS,skinning_pars_vertex:vS,skinning_vertex:_S,skinnormal_vertex:yS,specularmap_fragment:xS,specularmap_pars_fragment:bS,tonemapping_fragment:wS,tonemapping_pars_fragment:MS,transmission_fragment:SS,transmission_pars_fragment:TS,uv_pars_fragment:AS,uv_pars_vertex:ES,uv_vertex:CS,worldpos_vertex:RS,background_vert:PS,background_frag:IS,backgroundCube_vert:DS,backgroundCube_frag:LS,cube_vert:NS,cube_frag:US,depth_vert:OS,depth_frag:kS,distance_vert:FS,distance_frag:BS,equirect_vert:zS,equirect_frag:VS,linedashed_vert:GS,linedashed_frag:HS,meshbasic_vert:WS,meshbasic_frag:$S,meshlambert_vert:XS,meshlambert_frag:qS,meshmatcap_vert:YS,meshmatcap_frag:ZS,meshnormal_vert:JS,meshnormal_frag:KS,meshphong_vert:jS,meshphong_frag:QS,meshphysical_vert:t1,meshphysical_frag:e1,meshtoon_vert:n1,meshtoon_frag:i1,points_vert:s1,points_frag:r1,shadow_vert:o1,shadow_frag:a1,sprite_vert:l1,sprite_frag:c1},xt={common:{diffuse:{value:new Xt(16777215)},opacity:{value:1},map:{value:null},mapTransform:{value:new Gt},alphaMap:{value:null},alphaMapTransform:{value:new Gt},alphaTest:{value:0}},specularmap:{specularMap:{value:null},specularMapTransform:{value:new Gt}},envmap:{envMap:{value:null},envMapRotation:{value:new Gt},reflectivity:{value:1},ior:{value:1.5},refractionRatio:{value:.98},dfgLUT:{value:null}},aomap:{aoMap:{value:null},aoMapIntensity:{value:1},aoMapTransform:{value:new Gt}},lightmap:{lightMap:{value:null},lightMapIntensity:{value:1},lightMapTransform:{value:new Gt}},bumpmap:{bumpMap:{value:null},bumpMapTransform:{value:new Gt},bumpScale:{value:1}},normalmap:{normalMap:{value:null},normalMapTransform:{value:new Gt},normalScale:{value:new at(1,1)}},displacementmap:{displacementMap:{value:null},displacementMapTransform:{value:new Gt},displacementScale:{value:1},displacementBias:{value:0}},emissivemap:{emissiveMap:{value:null},emissiveMapTransform:{value:new Gt}},metalnessmap:{metalnessMap:{value:null},metalnessMapTransform:{value:new Gt}},roughnessmap:{roughnessMap:{value:null},roughnessMapTransform:{value:new Gt}},gradientmap:{gradientMap:{value:null}},fog:{fogDensity:{value:25e-5},fogNear:{value:1},fogFar:{value:2e3},fogColor:{value:new Xt(16777215)}},lights:{ambientLightColor:{value:[]},lightProbe:{value:[]},sunLights:{value:[],properties:{direction:{},color:{}}},sunLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},sunShadowMatrix:{value:[]},sunShadowCascade:{value:[]},directionalLights:{value:[],properties:{direction:{},color:{}}},directionalLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},directionalShadowMatrix:{value:[]},spotLights:{value:[],properties:{color:{},position:{},direction:{},distance:{},coneCos:{},penumbraCos:{},decay:{}}},spotLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},spotLightMap:{value:[]},spotLightMatrix:{value:[]},pointLights:{value:[],properties:{color:{},position:{},decay:{},distance:{}}},pointLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{},shadowCameraNear:{},shadowCameraFar:{}}},pointShadowMatrix:{value:[]},hemisphereLights:{value:[],properties:{direction:{},skyColor:{},groundColor:{}}},rectAreaLights:{value:[],properties:{color:{},position:{},width:{},height:{}}},ltc_1:{value:null},ltc_2:{value:null},probesSH:{value:[]},probesMin:{value:[]},probesMax:{value:[]},probesResolution:{value:[]}},points:{diffuse:{value:new Xt(16777215)},opacity:{value:1},size:{value:1},scale:{value:1},map:{value:null},alphaMap:{value:null},alphaMapTransform:{value:new Gt},alphaTest:{value:0},uvTransform:{value:new Gt}},sprite:{diffuse:{value:new Xt(16777215)},opacity:{value:1},center:{value:new at(.5,.5)},rotation:{value:0},map:{value:null},mapTransform:{value:new Gt},alphaMap:{value:null},alphaMapTransform:{value:new Gt},alphaTest:{value:0}}},Si={basic:{uniforms:mn([xt.common,xt.specularmap,xt.envmap,xt.aomap,xt.lightmap,xt.fog]),vertexShader:Jt.meshbasic_vert,fragmentShader:Jt.meshbasic_frag},lambert:{uniforms:mn([xt.common,xt.specularmap,xt.envmap,xt.aomap,xt.lightmap,xt.emissivemap,xt.bumpmap,xt.normalmap,xt.displacementmap,xt.fog,xt.lights,{emissive:{value:new Xt(0)},envMapIntensity:{value:1}}]),vertexShader:Jt.meshlambert_vert,fragmentShader:Jt.meshlambert_frag},phong:{uniforms:mn([xt.common,xt.specularmap,xt.envmap,xt.aomap,xt.lightmap,xt.emissivemap,xt.bumpmap,xt.normalmap,xt.displacementmap,xt.fog,xt.lights,{emissive:{value:new Xt(0)},specular:{value:new Xt(1118481)},shininess:{value:30},envMapIntensity:{value:1}}]),vertexShader:Jt.meshphong_vert,fragmentShader:Jt.meshphong_frag},standard:{uniforms:mn([xt.common,xt.envmap,xt.aomap,xt.lightmap,xt.emissivemap,xt.bumpmap,xt.normalmap,xt.displacementmap,xt.roughnessmap,xt.metalnessmap,xt.fog,xt.lights,{emissive:{value:new Xt(0)},roughness:{value:1},metalness:{value:0},envMapIntensity:{value:1}}]),vertexShader:Jt.meshphysical_vert,fragmentShader:Jt.meshphysical_frag},toon:{uniforms:mn([xt.common,xt.aomap,xt.lightmap,xt.emissivemap,xt.bumpmap,xt.normalmap,xt.displacementmap,xt.gradientmap,xt.fog,xt.lights,{emissive:{value:new Xt(0)}}]),vertexShader:Jt.meshtoon_vert,fragmentShader:Jt.meshtoon_frag},matcap:{uniforms:mn([xt.common,xt.bumpmap,xt.normalmap,xt.displacementmap,xt.fog,{matcap:{value:null}}]),vertexShader:Jt.meshmatcap_vert,fragmentShader:Jt.meshmatcap_frag},points:{uniforms:mn([xt.points,xt.fog]),vertexShader:Jt.points_vert,fragmentShader:Jt.points_frag},dashed:{uniforms:mn([xt.common,xt.fog,{scale:{value:1},dashSize:{value:1},totalSize:{value:2}}]),vertexShader:Jt.linedashed_vert,fragmentShader:Jt.linedashed_frag},depth:{uniforms:mn([xt.common,xt.displacementmap]),vertexShader:Jt.depth_vert,fragmentShader:Jt.depth_frag},normal:{uniforms:mn([xt.common,xt.bumpmap,xt.normalmap,xt.displacementmap,{opacity:{value:1}}]),vertexShader:Jt.meshnormal_vert,fragmentShader:Jt.meshnormal_frag},sprite:{uniforms:mn([xt.sprite,xt.fog]),vertexShader:Jt.sprite_vert,fragmentShader:Jt.sprite_frag},background:{uniforms:{uvTransform:{value:new Gt},t2D:{value:null},backgroundIntensity:{value:1}},vertexShader:Jt.background_vert,fragmentShader:Jt.background_frag},backgroundCube:{uniforms:{envMap:{value:null},backgroundBlurriness:{value:0},backgroundIntensity:{value:1},backgroundRotation:{value:new Gt}},vertexShader:Jt.backgroundCube_vert,fragmentShader:Jt.backgroundCube_frag},cube:{uniforms:{tCube:{value:null},tFlip:{value:-1},opacity:{value:1}},vertexShader:Jt.cube_vert,fragmentShader:Jt.cube_frag},equirect:{uniforms:{tEquirect:{value:null}},vertexShader:Jt.equirect_vert,fragmentShader:Jt.equirect_frag},distance:{uniforms:mn([xt.common,xt.displacementmap,{referencePosition:{value:new N},nearDistance:{value:1},farDistance:{value:1e3}}]),vertexShader:Jt.distance_vert,fragmentShader:Jt.distance_frag},shadow:{uniforms:mn([xt.lights,xt.fog,{color:{value:new Xt(0)},opacity:{value:1}}]),vertexShader:Jt.shadow_vert,fragmentShader:Jt.shadow_frag}};Si.physical={uniforms:mn([Si.standard.uniforms,{clearcoat:{value:0},clearcoatMap:{value:null},clearcoatMapTransform:{value:new Gt},clearcoatNormalMap:{value:null},clearcoatNormalMapTransform:{value:new Gt},clearcoatNormalScale:{value:new at(1,1)},clearcoatRoughness:{value:0},clearcoatRoughnessMap:{value:null},clearcoatRoughnessMapTransform:{value:new Gt},diffuseRoughness:{value:0},diffuseRoughnessMap:{value:null},diffuseRoughnessMapTransform:{value:new Gt},dispersion:{value:0},retroreflectivity:{value:0},iridescence:{value:0},iridescenceMap:{value:null},iridescenceMapTransform:{value:new Gt},iridescenceIOR:{value:1.3},iridescenceThicknessMinimum:{value:100},iridescenceThicknessMaximum:{value:400},iridescenceThicknessMap:{value:null},iridescenceThicknessMapTransform:{value:new Gt},sheen:{value:0},sheenColor:{value:new Xt(0)},sheenColorMap:{value:null},sheenColorMapTransform:{value:new Gt},sheenRoughness:{value:1},sheenRoughnessMap:{value:null},sheenRoughnessMapTransform:{value:new Gt},transmission:{value:0},transmissionMap:{value:null},transmissionMapTransform:{value:new Gt},transmissionSamplerSize:{value:new at},transmissionSamplerMap:{value:null},thickness:{value:0},thicknessMap:{value:null},thicknessMapTransform:{value:new Gt},attenuationDistance:{value:0},attenuationColor:{value:new Xt(0)},specularColor:{value:new Xt(1,1,1)},specularColorMap:{value:null},specularColorMapTransform:{value:new Gt},specularIntensity:{value:1},specularIntensityMap:{value:null},specularIntensityMapTransform:{value:new Gt},anisotropyVector:{value:new at},anisotropyMap:{value:null},anisotropyMapTransform:{value:new Gt}}]),vertexShader:Jt.meshphysical_vert,fragmentShader:Jt.meshphysical_frag};var Qu={r:0,b:0,g:0},u1=new oe,Pv=new Gt;Pv.set(-1,0,0,0,1,0,0,0,1);function h1(n,t,e,i,s,r){let o=new Xt(0),a=s===!0?0:1,l,u,h=null,d=0,p=null;function f(y){let M=y.isScene===!0?y.background:null;if(M&&M.isTexture){let b=y.backgroundBlurriness>0;M=t.get(M,b)}return M}function g(y){let M=!1,b=f(y);b===null?v(o,a):b&&b.isColor&&(v(b,1),M=!0);let E=n.xr.getEnvironmentBlendMode();E==="additive"?e.buffers.color.setClear(0,0,0,1,r):E==="alpha-blend"&&e.buffers.color.setClear(0,0,0,0,r),(n.autoClear||M)&&(e.buffers.depth.setTest(!0),e.buffers.depth.setMask(!0),e.buffers.color.setMask(!0),n.clear(n.autoClearColor,n.autoClearDepth,n.autoClearStencil))}function _(y,M){let b=f(M);b&&b.isCubeTexture?(u===void 0&&(u=new Oe(new Cn(1,1,1),new Vn({name:"BackgroundCubeMaterial",uniforms:er(Si.backgroundCube.uniforms),vertexShader:Si.backgroundCube.vertexShader,fragmentShader:Si.backgroundCube.fragmentShader,side:wn,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),u.geometry.deleteAttribute("normal"),u.geometry.deleteAttribute("uv"),u.onBeforeRender=function(E,A,x){this.matrixWorld.copyPosition(x.matrixWorld)},Object.defineProperty(u.material,"envMap",{get:function(){return this.uniforms.envMap.value}}),i.update(u)),u.material.uniforms.envMap.value=b,u.material.uniforms.backgroundBlurriness.value=M.backgroundBlurriness,u.material.uniforms.backgroundIntensity.value=M.backgroundIntensity,u.material.uniforms.backgroundRotation.value.setFromMatrix4(u1.makeRotationFromEuler(M.backgroundRotation)).transpose(),b.isRenderTargetTexture===!1&&u.material.uniforms.backgroundRotation.value.premultiply(Pv),u.material.toneMapped=ne.getTransfer(b.colorSpace)!==de,(h!==b||d!==b.version||p!==n.toneMapping)&&(u.material.needsUpdate=!0,h=b,d=b.version,p=n.toneMapping),u.layers.enableAll(),y.unshift(u,u.geometry,u.material,0,0,null)):b&&b.isTexture&&(l===void 0&&(l=new Oe(new La(2,2),new Vn({name:"BackgroundMaterial",uniforms:er(Si.background.uniforms),vertexShader:Si.background.vertexShader,fragmentShader:Si.background.fragmentShader,side:ws,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),l.geometry.deleteAttribute("normal"),Object.defineProperty(l.material,"map",{get:function(){return this.uniforms.t2D.value}}),i.update(l)),l.material.uniforms.t2D.value=b,l.material.uniforms.backgroundIntensity.value=M.backgroundIntensity,l.material.toneMapped=ne.getTransfer(b.colorSpace)!==de,b.matrixAutoUpdate===!0&&b.updateMatrix(),l.material.uniforms.uvTransform.value.copy(b.matrix),(h!==b||d!==b.version||p!==n.toneMapping)&&(l.material.needsUpdate=!0,h=b,d=b.version,p=n.toneMapping),l.layers.enableAll(),y.unshift(l,l.geometry,l.material,0,0,null))}function v(y,M){y.getRGB(Qu,Bf(n)),e.buffers.color.setClear(Qu.r,Qu.g,Qu.b,M,r)}function m(){u!==void 0&&(u.geometry.dispose(),u.material.dispose(),u=void 0),l!==void 0&&(l.geometry.dispose(),l.material.dispose(),l=void 0)}return{getClearColor:function(){return o},setClearColor:function(y,M=1){o.set(y),a=M,v(o,a)},getClearAlpha:function(){return a},setClearAlpha:function(y){a=y,v(o,a)},render:g,addToRenderList:_,dispose:m}}function d1(n,t){let e=n.getParameter(n.MAX_VERTEX_ATTRIBS),i={},s=p(null),r=s,o=!1;function a(P,O,B,I,W){let $=!1,F=d(P,I,B,O);r!==F&&(r=F,u(r.object)),$=f(P,I,B,W),$&&g(P,I,B,W),W!==null&&t.update(W,n.ELEMENT_ARRAY_BUFFER),($||o)&&(o=!1,b(P,O,B,I),W!==null&&n.bindBuffer(n.ELEMENT_ARRAY_BUFFER,t.get(W).buffer))}function l(){return n.createVertexArray()}function u(P){return n.bindVertexArray(P)}function h(P){return n.deleteVertexArray(P)}function d(P,O,B,I){let W=I.wireframe===!0,$=i[O.id];$===void 0&&($={},i[O.id]=$);let F=P.isInstancedMesh===!0?P.id:0,Q=$[F];Q===void 0&&(Q={},$[F]=Q);let G=Q[B.id];G===void 0&&(G={},Q[B.id]=G);let tt=G[W];return tt===void 0&&(tt=p(l()),G[W]=tt),tt}function p(P){let O=[],B=[],I=[];for(let W=0;W<e;W++)O[W]=0,B[W]=0,I[W]=0;return{geometry:null,program:null,wireframe:!1,newAttributes:O,enabledAttributes:B,attributeDivisors:I,object:P,attributes:{},index:null}}function f(P,O,B,I){let W=r.attributes,$=O.attributes,F=0,Q=B.getAttributes();for(let G in Q)if(Q[G].location>=0){let et=W[G],St=$[G];if(St===void 0&&(G==="instanceMatrix"&&P.instanceMatrix&&(St=P.instanceMatrix),G==="instanceColor"&&P.instanceColor&&(St=P.instanceColor)),et===void 0||et.attribute!==St||St&&et.data!==St.data)return!0;F++}return r.attributesNum!==F||r.index!==I}function g(P,O,B,I){let W={},$=O.attributes,F=0,Q=B.getAttributes();for(let G in Q)if(Q[G].location>=0){let et=$[G];et===void 0&&(G==="instanceMatrix"&&P.instanceMatrix&&(et=P.instanceMatrix),G==="instanceColor"&&P.instanceColor&&(et=P.instanceColor));let St={};St.attribute=et,et&&et.data&&(St.data=et.data),W[G]=St,F++}r.attributes=W,r.attributesNum=F,r.index=I}function _(){let P=r.newAttributes;for(let O=0,B=P.length;O<B;O++)P[O]=0}function v(P){m(P,0)}function m(P,O){let B=r.newAttributes,I=r.enabledAttributes,W=r.attributeDivisors;B[P]=1,I[P]===0&&(n.enableVertexAttribArray(P),I[P]=1),W[P]!==O&&(n.vertexAttribDivisor(P,O),W[P]=O)}function y(){let P=r.newAttributes,O=r.enabledAttributes;for(let B=0,I=O.length;B<I;B++)O[B]!==P[B]&&(n.disableVertexAttribArray(B),O[B]=0)}function M(P,O,B,I,W,$,F){F===!0?n.vertexAttribIPointer(P,O,B,W,$):n.vertexAttribPointer(P,O,B,I,W,$)}function b(P,O,B,I){_();let W=I.attributes,$=B.getAttributes(),F=O.defaultAttributeValues;for(let Q in $){let G=$[Q];if(G.location>=0){let tt=W[Q];if(tt===void 0&&(Q==="instanceMatrix"&&P.instanceMatrix&&(tt=P.instanceMatrix),Q==="instanceColor"&&P.instanceColor&&(tt=P.instanceColor)),tt!==void 0){let et=tt.normalized,St=tt.itemSize,Ot=t.get(tt);if(Ot===void 0)continue;let Z=Ot.buffer,gt=Ot.type,wt=Ot.bytesPerElement,It=gt===n.INT||gt===n.UNSIGNED_INT||tt.gpuType===pu;if(tt.isInterleavedBufferAttribute){let _t=tt.data,zt=_t.isInterleavedBuffer===!0?_t.stride:_t.itemSize,Le=tt.offset;if(_t.isInstancedInterleavedBuffer||_t.isInstancedBufferAttribute){for(let Ut=0;Ut<G.locationSize;Ut++)m(G.location+Ut,_t.meshPerAttribute);P.isInstancedMesh!==!0&&I._maxInstanceCount===void 0&&(I._maxInstanceCount=_t.meshPerAttribute*_t.count)}else for(let Ut=0;Ut<G.locationSize;Ut++)v(G.location+Ut);n.bindBuffer(n.ARRAY_BUFFER,Z);for(let Ut=0;Ut<G.locationSize;Ut++)M(G.location+Ut,St/G.locationSize,gt,et,zt*wt,(Le+St/G.locationSize*Ut)*wt,It)}else{if(tt.isInstancedBufferAttribute){for(let _t=0;_t<G.locationSize;_t++)m(G.location+_t,tt.meshPerAttribute);P.isInstancedMesh!==!0&&I._maxInstanceCount===void 0&&(I._maxInstanceCount=tt.meshPerAttribute*tt.count)}else for(let _t=0;_t<G.locationSize;_t++)v(G.location+_t);n.bindBuffer(n.ARRAY_BUFFER,Z);for(let _t=0;_t<G.locationSize;_t++)M(G.location+_t,St/G.locationSize,gt,et,St*wt,St/G.locationSize*_t*wt,It)}}else if(F!==void 0){let et=F[Q];if(et!==void 0)switch(et.length){case 2:n.vertexAttrib2fv(G.location,et);break;case 3:n.vertexAttrib3fv(G.location,et);break;case 4:n.vertexAttrib4fv(G.location,et);break;default:n.vertexAttrib1fv(G.location,et)}}}}y()}function E(){L();for(let P in i){let O=i[P];for(let B in O){let I=O[B];for(let W in I){let $=I[W];for(let F in $)h($[F].object),delete $[F];delete I[W]}}delete i[P]}}function A(P){if(i[P.id]===void 0)return;let O=i[P.id];for(let B in O){let I=O[B];for(let W in I){let $=I[W];for(let F in $)h($[F].object),delete $[F];delete I[W]}}delete i[P.id]}function x(P){for(let O in i){let B=i[O];for(let I in B){let W=B[I];if(W[P.id]===void 0)continue;let $=W[P.id];for(let F in $)h($[F].object),delete $[F];delete W[P.id]}}}function T(P){for(let O in i){let B=i[O],I=P.isInstancedMesh===!0?P.id:0,W=B[I];if(W!==void 0){for(let $ in W){let F=W[$];for(let Q in F)h(F[Q].object),delete F[Q];delete W[$]}delete B[I],Object.keys(B).length===0&&delete i[O]}}}function L(){R(),o=!0,r!==s&&(r=s,u(r.object))}function R(){s.geometry=null,s.program=null,s.wireframe=!1}return{setup:a,reset:L,resetDefaultState:R,dispose:E,releaseStatesOfGeometry:A,releaseStatesOfObject:T,releaseStatesOfProgram:x,initAttributes:_,enableAttribute:v,disableUnusedAttributes:y}}function f1(n,t,e){let i;function s(l){i=l}function r(l,u){n.drawArrays(i,l,u),e.update(u,i,1)}function o(l,u,h){h!==0&&(n.drawArraysInstanced(i,l,u,h),e.update(u,i,h))}function a(l,u,h){if(h===0)return;t.get("WEBGL_multi_draw").multiDrawArraysWEBGL(i,l,0,u,0,h);let p=0;for(let f=0;f<h;f++)p+=u[f];e.update(p,i,1)}this.setMode=s,this.render=r,this.renderInstances=o,this.renderMultiDraw=a}function p1(n,t,e,i){let s;function r(){if(s!==void 0)return s;if(t.has("EXT_texture_filter_anisotropic")===!0){let x=t.get("EXT_texture_filter_anisotropic");s=n.getParameter(x.MAX_TEXTURE_MAX_ANISOTROPY_EXT)}else s=0;return s}function o(x){return!(x!==fi&&i.convert(x)!==n.getParameter(n.IMPLEMENTATION_COLOR_READ_FORMAT))}function a(x){let T=x===di&&(t.has("EXT_color_buffer_half_float")||t.has("EXT_color_buffer_float"));return!(x!==Rn&&x!==jn&&!T&&i.convert(x)!==n.getParameter(n.IMPLEMENTATION_COLOR_READ_TYPE))}function l(x){if(x==="highp"){if(n.getShaderPrecisionFormat(n.VERTEX_SHADER,n.HIGH_FLOAT).precision>0&&n.getShaderPrecisionFormat(n.FRAGMENT_SHADER,n.HIGH_FLOAT).precision>0)return"highp";x="mediump"}return x==="mediump"&&n.getShaderPrecisionFormat(n.VERTEX_SHADER,n.MEDIUM_FLOAT).precision>0&&n.getShaderPrecisionFormat(n.FRAGMENT_SHADER,n.MEDIUM_FLOAT).precision>0?"mediump":"lowp"}let u=e.precision!==void 0?e.precision:"highp",h=l(u);h!==u&&(Nt("WebGLRenderer:",u,"not supported, using",h,"instead."),u=h);let d=e.reversedDepthBuffer===!0&&t.has("EXT_clip_control"),p=e.logarithmicDepthBuffer===!0&&d===!1;e.reversedDepthBuffer===!0&&d===!1&&Nt("WebGLRenderer: Unable to use reversed depth buffer due to missing EXT_clip_control extension. Fallback to default depth buffer."),e.logarithmicDepthBuffer===!0&&d===!0&&Nt("WebGLRenderer: Logarithmic depth buffer is ignored when reversed depth buffer is enabled.");let f=n.getParameter(n.MAX_TEXTURE_IMAGE_UNITS),g=n.getParameter(n.MAX_VERTEX_TEXTURE_IMAGE_UNITS),_=n.getParameter(n.MAX_TEXTURE_SIZE),v=n.getParameter(n.MAX_CUBE_MAP_TEXTURE_SIZE),m=n.getParameter(n.MAX_VERTEX_ATTRIBS),y=n.getParameter(n.MAX_VERTEX_UNIFORM_VECTORS),M=n.getParameter(n.MAX_VARYING_VECTORS),b=n.getParameter(n.MAX_FRAGMENT_UNIFORM_VECTORS),E=n.getParameter(n.MAX_SAMPLES),A=n.getParameter(n.SAMPLES);return{isWebGL2:!0,getMaxAnisotropy:r,getMaxPrecision:l,textureFormatReadable:o,textureTypeReadable:a,precision:u,logarithmicDepthBuffer:p,reversedDepthBuffer:d,maxTextures:f,maxVertexTextures:g,maxTextureSize:_,maxCubemapSize:v,maxAttributes:m,maxVertexUniforms:y,maxVaryings:M,maxFragmentUniforms:b,maxSamples:E,samples:A}}function m1(n){let t=this,e=null,i=0,s=!1,r=!1,o=new Fn,a=new Gt,l={value:null,needsUpdate:!1};this.uniform=l,this.numPlanes=0,this.numIntersection=0,this.init=function(d,p){let f=d.length!==0||p||i!==0||s;return s=p,i=d.length,f},this.beginShadows=function(){r=!0,h(null)},this.endShadows=function(){r=!1},this.setGlobalState=function(d,p){e=h(d,p,0)},this.setState=function(d,p,f){let g=d.clippingPlanes,_=d.clipIntersection,v=d.clipShadows,m=n.get(d);if(!s||g===null||g.length===0||r&&!v)r?h(null):u();else{let y=r?0:i,M=y*4,b=m.clippingState||null;l.value=b,b=h(g,p,M,f);for(let E=0;E!==M;++E)b[E]=e[E];m.clippingState=b,this.numIntersection=_?this.numPlanes:0,this.numPlanes+=y}};function u(){l.value!==e&&(l.value=e,l.needsUpdate=i>0),t.numPlanes=i,t.numIntersection=0}function h(d,p,f,g){let _=d!==null?d.length:0,v=null;if(_!==0){if(v=l.value,g!==!0||v===null){let m=f+_*4,y=p.matrixWorldInverse;a.getNormalMatrix(y),(v===null||v.length<m)&&(v=new Float32Array(m));for(let M=0,b=f;M!==_;++M,b+=4)o.copy(d[M]).applyMatrix4(y,a),o.normal.toArray(v,b),v[b+3]=o.constant}l.value=v,l.needsUpdate=!0}return t.numPlanes=_,t.numIntersection=0,v}}var ja=class extends Bn{constructor(t=1,e={}){super(t,t,e),this.isWebGLCubeRenderTarget=!0;let i={width:t,height:t,depth:1},s=[i,i,i,i,i,i];this.texture=new ba(s),this._setTextureOptions(e),this.texture.isRenderTargetTexture=!0}fromEquirectangularTexture(t,e){this.texture.type=e.type,this.texture.colorSpace=e.colorSpace,this.texture.generateMipmaps=e.generateMipmaps,this.texture.minFilter=e.minFilter,this.texture.magFilter=e.magFilter;let i={uniforms:{tEquirect:{value:null}},vertexShader:`

				varying vec3 vWorldDirection;

				vec3 transformDirection( in vec3 dir, in mat4 matrix ) {

					return normalize( ( matrix * vec4( dir, 0.0 ) ).xyz );

				}

				void main() {

					vWorldDirection = transformDirection( position, modelMatrix );

					#include <begin_vertex>
					#include <project_vertex>

				}
			`,fragmentShader:`

				uniform sampler2D tEquirect;

				varying vec3 vWorldDirection;

				#include <common>

				void main() {

					vec3 direction = normalize( vWorldDirection );

					vec2 sampleUV = equirectUv( direction );

					gl_FragColor = texture2D( tEquirect, sampleUV );

				}
			`},s=new Cn(5,5,5),r=new Vn({name:"CubemapFromEquirect",uniforms:er(i.uniforms),vertexShader:i.vertexShader,fragmentShader:i.fragmentShader,side:wn,blending:Js});r.uniforms.tEquirect.value=e;let o=new Oe(s,r),a=e.minFilter;return e.minFilter===Yi&&(e.minFilter=bn),new io(1,10,this).update(t,o),e.minFilter=a,o.geometry.dispose(),o.material.dispose(),this}clear(t,e=!0,i=!0,s=!0){let r=t.getRenderTarget();for(let o=0;o<6;o++)t.setRenderTarget(this,o),t.clear(e,i,s);t.setRenderTarget(r)}},lv=256,g1=3,v1=20,Iv=256,Dv=16,_1=3,y1=new N,x1=new Xt,eh=class n{constructor(t){this._renderer=t,this._cubeSize=0,this._sourceTarget=null,this._cubeCamera=new io(1,10,null),this._boxMesh=new Oe(new Cn(5,5,5),null),this._cubemapMaterial=null,this._equirectMaterial=null,this._blurMaterial=null,this._ggxMaterial=null,this._integrationMaterial=null}fromScene(t,e=0,i=.1,s=100,r={}){let{size:o=256,position:a=y1}=r,l=this._renderer;this._setSize(o);let u=this._allocateTarget(),h=this._getSourceTarget(!0);e>0&&(h.texture.mipmapsAutoUpdate=!1);let d=l.autoClear,p=l.autoClearColor,f=l.autoClearDepth,g=l.autoClearStencil,_=t.background;l.autoClear=!0,l.autoClearColor=!0,l.autoClearDepth=!0,l.autoClearStencil=!0,_===null&&(t.background=l.getClearColor(x1));let v=new io(i,s,h);return v.position.copy(a),v.update(l,t),l.autoClear=d,l.autoClearColor=p,l.autoClearDepth=f,l.autoClearStencil=g,t.background=_,e>0&&(h.texture.mipmapsAutoUpdate=!0,this._blur(u,e)),this._applyPMREM(u),u}fromEquirectangular(t,e=null){return this._fromTexture(t,e)}fromCubemap(t,e=null){return this._fromTexture(t,e)}compileCubemapShader(){this._cubemapMaterial===null&&(this._cubemapMaterial=hv(),this._compileMaterial(this._cubemapMaterial))}compileEquirectangularShader(){this._equirectMaterial===null&&(this._equirectMaterial=uv(),this._compileMaterial(this._equirectMaterial))}dispose(){this._sourceTarget!==null&&this._sourceTarget.dispose(),this._cubemapMaterial!==null&&this._cubemapMaterial.dispose(),this._equirectMaterial!==null&&this._equirectMaterial.dispose(),this._blurMaterial!==null&&this._blurMaterial.dispose(),this._ggxMaterial!==null&&this._ggxMaterial.dispose(),this._integrationMaterial!==null&&this._integrationMaterial.dispose(),this._boxMesh.geometry.dispose()}static lodToRoughness(t,e){return e>0?1-Math.sqrt(1-t/e):0}_setSize(t){this._cubeSize=Math.max(lv,Of(t))}_fromTexture(t,e){t.mapping===js||t.mapping===ao?this._setSize(t.image.length===0?lv:t.image[0].width||t.image[0].image.width):this._setSize(t.image.width/4);let i=e||this._allocateTarget();return this._textureToCubemap(t),this._applyPMREM(i),i}_allocateTarget(){let t=this._cubeSize,e=cv(t,!1,!1),i=Math.log2(t)-g1;for(let s=0;s<=i;s++)e.texture.mipmaps.push({width:t>>s,height:t>>s});return e.texture.name="PMREM",e.texture.isPMREMTexture=!0,e}_getSourceTarget(t=!1){let e=this._cubeSize,i=this._sourceTarget;return(i===null||i.width!==e||t&&i.depthBuffer===!1)&&(i!==null&&i.dispose(),this._sourceTarget=cv(e,!0,t)),this._sourceTarget}_compileMaterial(t){this._boxMesh.material=t,this._renderer.compile(this._boxMesh,this._cubeCamera.children[0])}_renderCube(t,e,i){let s=this._boxMesh,r=this._cubeCamera;s.material=i,r.renderTarget=t,r.activeMipmapLevel=e;let o=t.width>>e;t.viewport.set(0,0,o,o),r.update(this._renderer,s),t.viewport.set(0,0,t.width,t.height)}_textureToCubemap(t){let e;t.mapping===js||t.mapping===ao?(this._cubemapMaterial===null&&(this._cubemapMaterial=hv()),e=this._cubemapMaterial,e.uniforms.flipEnvMap.value=t.isRenderTargetTexture===!1?-1:1):(this._equirectMaterial===null&&(this._equirectMaterial=uv()),e=this._equirectMaterial),e.uniforms.envMap.value=t,this._renderCube(this._getSourceTarget(),0,e)}_applyPMREM(t){this._ggxMaterial===null&&(this._ggxMaterial=b1(),this._integrationMaterial=w1());let e=this._cubeSize,i=t.texture.mipmaps.length-1,s=this._ggxMaterial.uniforms;s.envMap.value=this._sourceTarget.texture;let r=this._integrationMaterial.uniforms;r.envMap.value=this._sourceTarget.texture,r.sourceLod.value=Math.log2(e/Dv);for(let o=0;o<=i;o++){let a=n.lodToRoughness(o,i);if(o>i-_1)r.roughness.value=a,this._renderCube(t,o,this._integrationMaterial);else{let l=a>0?Math.log2(e)+.5*Math.log2(6/(Iv*Math.pow(a,4)))+.5:0;s.roughness.value=a,s.lodBias.value=l,this._renderCube(t,o,this._ggxMaterial)}}}_blur(t,e){this._blurMaterial===null&&(this._blurMaterial=M1());let i=this._blurMaterial,s=i.uniforms,r=this._sourceTarget;s.sigma.value=Math.min(e,Math.PI)/Math.SQRT2,s.envMap.value=r.texture,this._renderCube(t,0,i),s.envMap.value=t.texture,this._renderCube(r,0,i)}};function cv(n,t,e){return new ja(n,{minFilter:Yi,generateMipmaps:t,type:di,colorSpace:ua,depthBuffer:e})}function Qa(n,t,e){return new Vn({name:n,uniforms:t,vertexShader:Jt.cube_vert,fragmentShader:e,side:wn,blending:Js,depthTest:!1,depthWrite:!1})}function b1(){return Qa("PMREMGGXConvolution",{envMap:{value:null},roughness:{value:0},lodBias:{value:0}},`

		#define GGX_SAMPLES ${Iv}u

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float roughness;
		uniform float lodBias;

		#include <common>

		// Van der Corput radical inverse
		float radicalInverse_VdC( uint bits ) {

			bits = ( bits << 16u ) | ( bits >> 16u );
			bits = ( ( bits & 0x55555555u ) << 1u ) | ( ( bits & 0xAAAAAAAAu ) >> 1u );
			bits = ( ( bits & 0x33333333u ) << 2u ) | ( ( bits & 0xCCCCCCCCu ) >> 2u );
			bits = ( ( bits & 0x0F0F0F0Fu ) << 4u ) | ( ( bits & 0xF0F0F0F0u ) >> 4u );
			bits = ( ( bits & 0x00FF00FFu ) << 8u ) | ( ( bits & 0xFF00FF00u ) >> 8u );
			return float( bits ) * 2.3283064365386963e-10; // / 0x100000000

		}

		// Hammersley sequence
		vec2 hammersley( uint i, uint N ) {

			return vec2( float( i ) / float( N ), radicalInverse_VdC( i ) );

		}

		void main() {

			vec3 N = normalize( vWorldDirection );

			// For very low roughness, just sample the environment directly
			if ( roughness < 0.001 ) {

				gl_FragColor = vec4( textureLod( envMap, N, 0.0 ).rgb, 1.0 );
				return;

			}

			float alpha = roughness * roughness;
			float alpha2 = alpha * alpha;

			// Tangent space basis for VNDF sampling
			vec3 up = abs( N.z ) < 0.999 ? vec3( 0.0, 0.0, 1.0 ) : vec3( 1.0, 0.0, 0.0 );
			vec3 tangent = normalize( cross( up, N ) );
			vec3 bitangent = cross( N, tangent );

			vec3 prefilteredColor = vec3( 0.0 );
			float totalWeight = 0.0;

			for ( uint i = 0u; i < GGX_SAMPLES; i ++ ) {

				vec2 Xi = hammersley( i, GGX_SAMPLES );

				// With V = N, sample the reflected direction directly.
				float invQ = 1.0 / ( 1.0 - Xi.x + alpha2 * Xi.x );
				float NdotL = ( 1.0 - Xi.x - alpha2 * Xi.x ) * invQ;

				if ( NdotL > 0.0 ) {

					float phi = 2.0 * PI * Xi.y;
					float sinTheta = 2.0 * alpha * sqrt( Xi.x * ( 1.0 - Xi.x ) ) * invQ;
					vec3 L = N * NdotL + ( tangent * cos( phi ) + bitangent * sin( phi ) ) * sinTheta;

					// Match the source mip to the sample's solid angle. The terms
					// independent of the sample are precomputed in lodBias.
					float d = alpha2 * invQ;
					float lod = max( log2( d ) + lodBias, 0.0 );

					// Weight by NdotL for the split-sum approximation
					prefilteredColor += textureLod( envMap, L, lod ).rgb * NdotL;
					totalWeight += NdotL;

				}

			}

			gl_FragColor = vec4( prefilteredColor / totalWeight, 1.0 );

		}
	`)}function w1(){return Qa("PMREMGGXIntegration",{envMap:{value:null},roughness:{value:0},sourceLod:{value:0},sourceSize:{value:Dv}},`

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float roughness;
		uniform float sourceLod;
		uniform int sourceSize;

		void main() {

			vec3 N = normalize( vWorldDirection );

			float alpha = roughness * roughness;
			float alpha2 = alpha * alpha;

			float texelSize = 2.0 / float( sourceSize );

			vec3 prefilteredColor = vec3( 0.0 );
			float totalWeight = 0.0;

			// Pair opposite texels: only the one in N's hemisphere contributes.
			for ( int face = 0; face < 3; face ++ ) {

				for ( int y = 0; y < sourceSize; y ++ ) {

					for ( int x = 0; x < sourceSize; x ++ ) {

						vec2 uv = ( vec2( x, y ) + 0.5 ) * texelSize - 1.0;
						vec3 texelDirection = face == 0 ? vec3( 1.0, uv ) : ( face == 1 ? vec3( uv.x, 1.0, uv.y ) : vec3( uv, 1.0 ) );

						float invDistance = inversesqrt( 1.0 + dot( uv, uv ) );
						float NdotL = dot( N, texelDirection );
						texelDirection *= NdotL < 0.0 ? - 1.0 : 1.0;
						NdotL = abs( NdotL ) * invDistance;

						// With V = N, NdotH squared is ( 1 + NdotL ) / 2. Common factors
						// in the GGX distribution and texel solid angle cancel when normalized.
						float d = 1.0 + alpha2 + ( alpha2 - 1.0 ) * NdotL;
						float weight = NdotL * invDistance * invDistance * invDistance / ( d * d );

						prefilteredColor += textureLod( envMap, texelDirection, sourceLod ).rgb * weight;
						totalWeight += weight;

					}

				}

			}

			gl_FragColor = vec4( prefilteredColor / totalWeight, 1.0 );

		}
	`)}function M1(){return Qa("PMREMSphericalGaussianBlur",{envMap:{value:null},sigma:{value:0}},`

		#define SAMPLES ${v1}
		#define GOLDEN_ANGLE 2.39996322973

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float sigma;

		#include <common>

		void main() {

			vec3 outputDirection = normalize( vWorldDirection );

			vec3 up = abs( outputDirection.z ) < 0.999 ? vec3( 0.0, 0.0, 1.0 ) : vec3( 1.0, 0.0, 0.0 );
			vec3 tangent = normalize( cross( up, outputDirection ) );
			vec3 bitangent = cross( outputDirection, tangent );

			// Truncate the kernel at three standard deviations or at the antipode.
			float thetaMax = min( 3.0 * sigma, PI );
			float truncation = 1.0 - exp( - 0.5 * thetaMax * thetaMax / ( sigma * sigma ) );

			vec3 accumColor = vec3( 0.0 );
			float accumWeight = 0.0;

			for ( int i = 0; i < SAMPLES; i ++ ) {

				// Stratified inverse-CDF sampling of the Gaussian, placed on a golden-angle spiral.
				float stratum = ( float( i ) + 0.5 ) / float( SAMPLES );
				float theta = sigma * sqrt( - 2.0 * log( 1.0 - stratum * truncation ) );
				float phi = float( i ) * GOLDEN_ANGLE;

				vec3 offset = cos( phi ) * tangent + sin( phi ) * bitangent;
				vec3 sampleDirection = cos( theta ) * outputDirection + sin( theta ) * offset;

				// Correct the planar sample density to solid angle.
				float weight = sin( theta ) / theta;

				accumColor += weight * textureLod( envMap, sampleDirection, 0.0 ).rgb;
				accumWeight += weight;

			}

			gl_FragColor = vec4( accumColor / accumWeight, 1.0 );

		}
	`)}function uv(){return Qa("PMREMEquirectangularToCubemap",{envMap:{value:null}},`

		varying vec3 vWorldDirection;

		uniform sampler2D envMap;

		#include <common>

		void main() {

			// Average four subpixel samples to preserve small, bright features.
			vec3 direction = normalize( vWorldDirection );
			vec3 dx = dFdx( direction ) * 0.25;
			vec3 dy = dFdy( direction ) * 0.25;

			vec3 color = textureLod( envMap, equirectUv( normalize( direction - dx - dy ) ), 0.0 ).rgb;
			color += textureLod( envMap, equirectUv( normalize( direction + dx - dy ) ), 0.0 ).rgb;
			color += textureLod( envMap, equirectUv( normalize( direction - dx + dy ) ), 0.0 ).rgb;
			color += textureLod( envMap, equirectUv( normalize( direction + dx + dy ) ), 0.0 ).rgb;
			gl_FragColor = vec4( color * 0.25, 1.0 );

		}
	`)}function hv(){return Qa("PMREMCubemapToCubemap",{envMap:{value:null},flipEnvMap:{value:-1}},`

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float flipEnvMap;

		void main() {

			gl_FragColor = vec4( textureCube( envMap, vec3( flipEnvMap * vWorldDirection.x, vWorldDirection.yz ) ).rgb, 1.0 );

		}
	`)}function S1(n){let t=new WeakMap,e=new WeakMap,i=null;function s(p,f=!1){return p==null?null:f?o(p):r(p)}function r(p){if(p&&p.isTexture){let f=p.mapping;if(f===hu||f===du)if(t.has(p)){let g=t.get(p).texture;return a(g,p.mapping)}else{let g=p.image;if(g&&g.height>0){let _=new ja(g.height);return _.fromEquirectangularTexture(n,p),t.set(p,_),p.addEventListener("dispose",u),a(_.texture,p.mapping)}else return null}}return p}function o(p){if(p&&p.isTexture&&p.isPMREMTexture!==!0){let f=p.mapping,g=f===hu||f===du,_=f===js||f===ao;if(g||_){let v=e.get(p),m=v!==void 0?v.texture.pmremVersion:0;if(p.isRenderTargetTexture&&p.pmremVersion!==m)return i===null&&(i=new eh(n)),v=g?i.fromEquirectangular(p,v):i.fromCubemap(p,v),v.texture.pmremVersion=p.pmremVersion,e.set(p,v),v.texture;if(v!==void 0)return v.texture;{let y=p.image;return g&&y&&y.height>0||_&&y&&l(y)?(i===null&&(i=new eh(n)),v=g?i.fromEquirectangular(p):i.fromCubemap(p),v.texture.pmremVersion=p.pmremVersion,e.set(p,v),p.addEventListener("dispose",h),v.texture):null}}}return p}function a(p,f){return f===hu?p.mapping=js:f===du&&(p.mapping=ao),p}function l(p){let f=0,g=6;for(let _=0;_<g;_++)p[_]!==void 0&&f++;return f===g}function u(p){let f=p.target;f.removeEventListener("dispose",u);let g=t.get(f);g!==void 0&&(t.delete(f),g.dispose())}function h(p){let f=p.target;f.removeEventListener("dispose",h);let g=e.get(f);g!==void 0&&(e.delete(f),g.dispose())}function d(){t=new WeakMap,e=new WeakMap,i!==null&&(i.dispose(),i=null)}return{get:s,dispose:d}}function T1(n){let t={};function e(i){if(t[i]!==void 0)return t[i];let s=n.getExtension(i);return t[i]=s,s}return{has:function(i){return e(i)!==null},init:function(){e("EXT_color_buffer_float"),e("WEBGL_clip_cull_distance"),e("OES_texture_float_linear"),e("EXT_color_buffer_half_float"),e("WEBGL_multisampled_render_to_texture"),e("WEBGL_render_shared_exponent")},get:function(i){let s=e(i);return s===null&&sa("WebGLRenderer: "+i+" extension not supported."),s}}}function A1(n,t,e,i){let s={},r=new WeakMap,o=new FinalizationRegistry(g=>delete s[g]);function a(g){l(g.target)}function l(g){g.index!==null&&t.remove(g.index);for(let v in g.attributes)t.remove(g.attributes[v]);g.removeEventListener("dispose",a),delete s[g.id],o.unregister(g);let _=r.get(g);_&&(t.remove(_),r.delete(g)),i.releaseStatesOfGeometry(g),g.isInstancedBufferGeometry===!0&&delete g._maxInstanceCount,e.memory.geometries--}function u(g,_){return s[_.id]!==void 0||(_.addEventListener("dispose",a),s[_.id]=new WeakRef(_),o.register(_,_.id,_),e.memory.geometries++),_}function h(g){let _=g.attributes;for(let v in _)t.update(_[v],n.ARRAY_BUFFER)}function d(g){let _=g.index,v=g.attributes.position,m=0;if(v===void 0)return;let y=_!==null?_.array.length:v.array.length/3-1,M=v.count>=65535?va:ga,b=new M(Math.ceil(y/3)*6,1),E=b.array;if(_!==null){let x=_.array;m=_.version;for(let T=0,L=0;T<y;T+=3){let R=x[T+0],P=x[T+1],O=x[T+2];E[L++]=R,E[L++]=P,E[L++]=P,E[L++]=O,E[L++]=O,E[L++]=R}}else{m=v.version;for(let x=0,T=0;x<y;x+=3){let L=x+0,R=x+1,P=x+2;E[T++]=L,E[T++]=R,E[T++]=R,E[T++]=P,E[T++]=P,E[T++]=L}}b.version=m;let A=r.get(g);A&&t.remove(A),r.set(g,b)}function p(g){let _=r.get(g);if(_){let v=g.index;v!==null&&_.version<v.version&&d(g)}else d(g);return r.get(g)}function f(){for(let g in s){let _=s[g].deref();_!==void 0&&l(_)}}return{get:u,update:h,getWireframeAttribute:p,dispose:f}}function E1(n,t,e){let i;function s(d){i=d}let r,o;function a(d){r=d.type,o=d.bytesPerElement}function l(d,p){n.drawElements(i,p,r,d*o),e.update(p,i,1)}function u(d,p,f){f!==0&&(n.drawElementsInstanced(i,p,r,d*o,f),e.update(p,i,f))}function h(d,p,f){if(f===0)return;t.get("WEBGL_multi_draw").multiDrawElementsWEBGL(i,p,0,r,d,0,f);let _=0;for(let v=0;v<f;v++)_+=p[v];e.update(_,i,1)}this.setMode=s,this.setIndex=a,this.render=l,this.renderInstances=u,this.renderMultiDraw=h}function C1(n){let t={geometries:0,textures:0},e={frame:0,calls:0,triangles:0,points:0,lines:0};function i(r,o,a){switch(e.calls++,o){case n.TRIANGLES:e.triangles+=a*(r/3);break;case n.LINES:e.lines+=a*(r/2);break;case n.LINE_STRIP:e.lines+=a*(r-1);break;case n.LINE_LOOP:e.lines+=a*r;break;case n.POINTS:e.points+=a*r;break;default:Bt("WebGLInfo: Unknown draw mode:",o);break}}function s(){e.calls=0,e.triangles=0,e.points=0,e.lines=0}return{memory:t,render:e,programs:null,autoReset:!0,reset:s,update:i}}function R1(n,t,e){let i=new WeakMap,s=new Re;function r(o,a,l){let u=o.morphTargetInfluences,h=a.morphAttributes.position||a.morphAttributes.normal||a.morphAttributes.color,d=h!==void 0?h.length:0,p=i.get(a);if(p===void 0||p.count!==d){let L=function(){x.dispose(),i.delete(a),a.removeEventListener("dispose",L)};p!==void 0&&p.texture.dispose();let f=a.morphAttributes.position!==void 0,g=a.morphAttributes.normal!==void 0,_=a.morphAttributes.color!==void 0,v=a.morphAttributes.position||[],m=a.morphAttributes.normal||[],y=a.morphAttributes.color||[],M=0;f===!0&&(M=1),g===!0&&(M=2),_===!0&&(M=3);let b=a.attributes.position.count*M,E=1;b>t.maxTextureSize&&(E=Math.ceil(b/t.maxTextureSize),b=t.maxTextureSize);let A=new Float32Array(b*E*4*d),x=new fa(A,b,E,d);x.type=jn,x.needsUpdate=!0;let T=M*4;for(let R=0;R<d;R++){let P=v[R],O=m[R],B=y[R],I=b*E*4*R;for(let W=0;W<P.count;W++){let $=W*T;f===!0&&(s.fromBufferAttribute(P,W),A[I+$+0]=s.x,A[I+$+1]=s.y,A[I+$+2]=s.z,A[I+$+3]=0),g===!0&&(s.fromBufferAttribute(O,W),A[I+$+4]=s.x,A[I+$+5]=s.y,A[I+$+6]=s.z,A[I+$+7]=0),_===!0&&(s.fromBufferAttribute(B,W),A[I+$+8]=s.x,A[I+$+9]=s.y,A[I+$+10]=s.z,A[I+$+11]=B.itemSize===4?s.w:1)}}p={count:d,texture:x,size:new at(b,E)},i.set(a,p),a.addEventListener("dispose",L)}if(o.isInstancedMesh===!0&&o.morphTexture!==null)l.getUniforms().setValue(n,"morphTexture",o.morphTexture,e);else{let f=0;for(let _=0;_<u.length;_++)f+=u[_];let g=a.morphTargetsRelative?1:1-f;l.getUniforms().setValue(n,"morphTargetBaseInfluence",g),l.getUniforms().setValue(n,"morphTargetInfluences",u)}l.getUniforms().setValue(n,"morphTargetsTexture",p.texture,e),l.getUniforms().setValue(n,"morphTargetsTextureSize",p.size)}return{update:r}}function P1(n,t,e,i,s){let r=new WeakMap;function o(u){let h=s.render.frame,d=u.geometry,p=t.get(u,d);if(r.get(p)!==h&&(t.update(p),r.set(p,h)),u.isInstancedMesh&&(u.hasEventListener("dispose",l)===!1&&u.addEventListener("dispose",l),r.get(u)!==h&&(e.update(u.instanceMatrix,n.ARRAY_BUFFER),u.instanceColor!==null&&e.update(u.instanceColor,n.ARRAY_BUFFER),r.set(u,h))),u.isSkinnedMesh){let f=u.skeleton;r.get(f)!==h&&(f.update(),r.set(f,h))}return p}function a(){r=new WeakMap}function l(u){let h=u.target;h.removeEventListener("dispose",l),i.releaseStatesOfObject(h),e.remove(h.instanceMatrix),h.instanceColor!==null&&e.remove(h.instanceColor)}return{update:o,dispose:a}}var I1={[gf]:"LINEAR_TONE_MAPPING",[vf]:"REINHARD_TONE_MAPPING",[_f]:"CINEON_TONE_MAPPING",[yf]:"ACES_FILMIC_TONE_MAPPING",[bf]:"AGX_TONE_MAPPING",[wf]:"NEUTRAL_TONE_MAPPING",[xf]:"CUSTOM_TONE_MAPPING"};function D1(n,t,e,i,s,r){let o=new Bn(t,e,{type:n,depthBuffer:s,stencilBuffer:r,samples:i?4:0,storeMultisampledDepthBuffer:!1,storeMultisampledStencilBuffer:!1,resolveDepthBuffer:!1,resolveStencilBuffer:!1}),a=null,l=null,u=null,h=new me;h.setAttribute("position",new jt([-1,3,0,-1,-1,0,3,-1,0],3)),h.setAttribute("uv",new jt([0,2,0,0,2,0],2));let d=new Zc({uniforms:{tDiffuse:{value:null}},vertexShader:`
			precision highp float;

			uniform mat4 modelViewMatrix;
			uniform mat4 projectionMatrix;

			attribute vec3 position;
			attribute vec2 uv;

			varying vec2 vUv;

			void main() {
				vUv = uv;
				gl_Position = projectionMatrix * modelViewMatrix * vec4( position, 1.0 );
			}`,fragmentShader:`
			precision highp float;

			uniform sampler2D tDiffuse;

			varying vec2 vUv;

			#include <tonemapping_pars_fragment>
			#include <colorspace_pars_fragment>

			void main() {
				gl_FragColor = texture2D( tDiffuse, vUv );

				#ifdef LINEAR_TONE_MAPPING
					gl_FragColor.rgb = LinearToneMapping( gl_FragColor.rgb );
				#elif defined( REINHARD_TONE_MAPPING )
					gl_FragColor.rgb = ReinhardToneMapping( gl_FragColor.rgb );
				#elif defined( CINEON_TONE_MAPPING )
					gl_FragColor.rgb = CineonToneMapping( gl_FragColor.rgb );
				#elif defined( ACES_FILMIC_TONE_MAPPING )
					gl_FragColor.rgb = ACESFilmicToneMapping( gl_FragColor.rgb );
				#elif defined( AGX_TONE_MAPPING )
					gl_FragColor.rgb = AgXToneMapping( gl_FragColor.rgb );
				#elif defined( NEUTRAL_TONE_MAPPING )
					gl_FragColor.rgb = NeutralToneMapping( gl_FragColor.rgb );
				#elif defined( CUSTOM_TONE_MAPPING )
					gl_FragColor.rgb = CustomToneMapping( gl_FragColor.rgb );
				#endif

				#ifdef SRGB_TRANSFER
					gl_FragColor = sRGBTransferOETF( gl_FragColor );
				#endif
			}`,depthTest:!1,depthWrite:!1}),p=new Oe(h,d),f=new Ba(-1,1,1,-1,0,1),g=null,_=null,v=!1,m,y=null,M=[],b=!1;this.setSize=function(E,A){o.setSize(E,A),a!==null&&a.setSize(E,A),l!==null&&l.setSize(E,A);for(let x=0;x<M.length;x++){let T=M[x];T.setSize&&T.setSize(E,A)}},this.setEffects=function(E){M=E,b=M.length>0&&M[0].isRenderPass===!0;let A=o.width,x=o.height;M.length>0&&a===null&&(a=new Bn(A,x,{type:di,depthBuffer:!1,stencilBuffer:!1}),l=new Bn(A,x,{type:di,depthBuffer:!1,stencilBuffer:!1}));let T=s===!0&&M.some(L=>L.needsDepthTexture===!0);T!==(o.depthTexture!==null)&&(T===!0&&u===null&&(u=new Xi(A,x),r===!0&&(u.format=Zi,u.type=Qs)),o.dispose(),o.depthTexture=T?u:null,o.resolveDepthBuffer=T,o.storeMultisampledDepthBuffer=T);for(let L=0;L<M.length;L++){let R=M[L];R.setSize&&R.setSize(A,x),T&&R.needsDepthTexture===!0&&R.setDepthTexture&&R.setDepthTexture(u)}},this.begin=function(E,A){if(v||E.toneMapping===wi&&M.length===0)return!1;if(y=A,A!==null){let x=A.width,T=A.height;(o.width!==x||o.height!==T)&&this.setSize(x,T)}return b===!1&&E.setRenderTarget(o),m=E.toneMapping,E.toneMapping=wi,!0},this.hasRenderPass=function(){return b},this.end=function(E,A){E.toneMapping=m,v=!0;let x=o,T=a;for(let L=0;L<M.length;L++){let R=M[L];R.enabled!==!1&&(R.render(E,T,x,A),R.needsSwap!==!1&&(x=T,T=T===a?l:a))}if(g!==E.outputColorSpace||_!==E.toneMapping){g=E.outputColorSpace,_=E.toneMapping,d.defines={},ne.getTransfer(g)===de&&(d.defines.SRGB_TRANSFER="");let L=I1[_];L&&(d.defines[L]=""),d.needsUpdate=!0}d.uniforms.tDiffuse.value=x.texture,E.setRenderTarget(y),E.render(p,f),y=null,v=!1},this.isCompositing=function(){return v},this.dispose=function(){o.dispose(),a!==null&&a.dispose(),l!==null&&l.dispose(),h.dispose(),d.dispose()}}var Lv=new En,Nv=new Xi(1,1),Uv=new wa(1),Ov=new fa,kv=new Fc,Fv=new ba,dv=[],fv=[],pv=new Float32Array(16),mv=new Float32Array(9),gv=new Float32Array(4);function uo(n,t,e){let i=n[0];if(i<=0||i>0)return n;let s=t*e,r=dv[s];if(r===void 0&&(r=new Float32Array(s),dv[s]=r),t!==0){i.toArray(r,0);for(let o=1,a=0;o!==t;++o)a+=e,n[o].toArray(r,a)}return r}function qe(n,t){if(n.length!==t.length)return!1;for(let e=0,i=n.length;e<i;e++)if(n[e]!==t[e])return!1;return!0}function Ye(n,t){for(let e=0,i=t.length;e<i;e++)n[e]=t[e]}function ih(n,t){let e=fv[t];e===void 0&&(e=new Int32Array(t),fv[t]=e);for(let i=0;i!==t;++i)e[i]=n.allocateTextureUnit();return e}function L1(n,t){let e=this.cache;e[0]!==t&&(n.uniform1f(this.addr,t),e[0]=t)}function N1(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y)&&(n.uniform2f(this.addr,t.x,t.y),e[0]=t.x,e[1]=t.y);else{if(qe(e,t))return;n.uniform2fv(this.addr,t),Ye(e,t)}}function U1(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z)&&(n.uniform3f(this.addr,t.x,t.y,t.z),e[0]=t.x,e[1]=t.y,e[2]=t.z);else if(t.r!==void 0)(e[0]!==t.r||e[1]!==t.g||e[2]!==t.b)&&(n.uniform3f(this.addr,t.r,t.g,t.b),e[0]=t.r,e[1]=t.g,e[2]=t.b);else{if(qe(e,t))return;n.uniform3fv(this.addr,t),Ye(e,t)}}function O1(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z||e[3]!==t.w)&&(n.uniform4f(this.addr,t.x,t.y,t.z,t.w),e[0]=t.x,e[1]=t.y,e[2]=t.z,e[3]=t.w);else{if(qe(e,t))return;n.uniform4fv(this.addr,t),Ye(e,t)}}function k1(n,t){let e=this.cache,i=t.elements;if(i===void 0){if(qe(e,t))return;n.uniformMatrix2fv(this.addr,!1,t),Ye(e,t)}else{if(qe(e,i))return;gv.set(i),n.uniformMatrix2fv(this.addr,!1,gv),Ye(e,i)}}function F1(n,t){let e=this.cache,i=t.elements;if(i===void 0){if(qe(e,t))return;n.uniformMatrix3fv(this.addr,!1,t),Ye(e,t)}else{if(qe(e,i))return;mv.set(i),n.uniformMatrix3fv(this.addr,!1,mv),Ye(e,i)}}function B1(n,t){let e=this.cache,i=t.elements;if(i===void 0){if(qe(e,t))return;n.uniformMatrix4fv(this.addr,!1,t),Ye(e,t)}else{if(qe(e,i))return;pv.set(i),n.uniformMatrix4fv(this.addr,!1,pv),Ye(e,i)}}function z1(n,t){let e=this.cache;e[0]!==t&&(n.uniform1i(this.addr,t),e[0]=t)}function V1(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y)&&(n.uniform2i(this.addr,t.x,t.y),e[0]=t.x,e[1]=t.y);else{if(qe(e,t))return;n.uniform2iv(this.addr,t),Ye(e,t)}}function G1(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z)&&(n.uniform3i(this.addr,t.x,t.y,t.z),e[0]=t.x,e[1]=t.y,e[2]=t.z);else{if(qe(e,t))return;n.uniform3iv(this.addr,t),Ye(e,t)}}function H1(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z||e[3]!==t.w)&&(n.uniform4i(this.addr,t.x,t.y,t.z,t.w),e[0]=t.x,e[1]=t.y,e[2]=t.z,e[3]=t.w);else{if(qe(e,t))return;n.uniform4iv(this.addr,t),Ye(e,t)}}function W1(n,t){let e=this.cache;e[0]!==t&&(n.uniform1ui(this.addr,t),e[0]=t)}function $1(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y)&&(n.uniform2ui(this.addr,t.x,t.y),e[0]=t.x,e[1]=t.y);else{if(qe(e,t))return;n.uniform2uiv(this.addr,t),Ye(e,t)}}function X1(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z)&&(n.uniform3ui(this.addr,t.x,t.y,t.z),e[0]=t.x,e[1]=t.y,e[2]=t.z);else{if(qe(e,t))return;n.uniform3uiv(this.addr,t),Ye(e,t)}}function q1(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z||e[3]!==t.w)&&(n.uniform4ui(this.addr,t.x,t.y,t.z,t.w),e[0]=t.x,e[1]=t.y,e[2]=t.z,e[3]=t.w);else{if(qe(e,t))return;n.uniform4uiv(this.addr,t),Ye(e,t)}}function sh(n){return n.version===0&&(n.compareFunction=Df,n.needsUpdate=!0),n}function Y1(n,t,e){let i=this.cache,s=e.allocateTextureUnit();i[0]!==s&&(n.uniform1i(this.addr,s),i[0]=s);let r;this.type===n.SAMPLER_2D_SHADOW?r=sh(Nv):r=Lv,e.setTexture2D(t||r,s)}function Z1(n,t,e){let i=this.cache,s=e.allocateTextureUnit();i[0]!==s&&(n.uniform1i(this.addr,s),i[0]=s),e.setTexture3D(t||kv,s)}function J1(n,t,e){let i=this.cache,s=e.allocateTextureUnit();i[0]!==s&&(n.uniform1i(this.addr,s),i[0]=s);let r;this.type===n.SAMPLER_CUBE_SHADOW?r=sh(Uv):r=Fv,e.setTextureCube(t||r,s)}function K1(n,t,e){let i=this.cache,s=e.allocateTextureUnit();i[0]!==s&&(n.uniform1i(this.addr,s),i[0]=s),e.setTexture2DArray(t||Ov,s)}function j1(n){switch(n){case 5126:return L1;case 35664:return N1;case 35665:return U1;case 35666:return O1;case 35674:return k1;case 35675:return F1;case 35676:return B1;case 5124:case 35670:return z1;case 35667:case 35671:return V1;case 35668:case 35672:return G1;case 35669:case 35673:return H1;case 5125:return W1;case 36294:return $1;case 36295:return X1;case 36296:return q1;case 35678:case 36198:case 36298:case 36306:case 35682:return Y1;case 35679:case 36299:case 36307:return Z1;case 35680:case 36300:case 36308:case 36293:return J1;case 36289:case 36303:case 36311:case 36292:return K1}}function Q1(n,t){n.uniform1fv(this.addr,t)}function tT(n,t){let e=uo(t,this.size,2);n.uniform2fv(this.addr,e)}function eT(n,t){let e=uo(t,this.size,3);n.uniform3fv(this.addr,e)}function nT(n,t){let e=uo(t,this.size,4);n.uniform4fv(this.addr,e)}function iT(n,t){let e=uo(t,this.size,4);n.uniformMatrix2fv(this.addr,!1,e)}function sT(n,t){let e=uo(t,this.size,9);n.uniformMatrix3fv(this.addr,!1,e)}function rT(n,t){let e=uo(t,this.size,16);n.uniformMatrix4fv(this.addr,!1,e)}function oT(n,t){n.uniform1iv(this.addr,t)}function aT(n,t){n.uniform2iv(this.addr,t)}function lT(n,t){n.uniform3iv(this.addr,t)}function cT(n,t){n.uniform4iv(this.addr,t)}function uT(n,t){n.uniform1uiv(this.addr,t)}function hT(n,t){n.uniform2uiv(this.addr,t)}function dT(n,t){n.uniform3uiv(this.addr,t)}function fT(n,t){n.uniform4uiv(this.addr,t)}function pT(n,t,e){let i=this.cache,s=t.length,r=ih(e,s);qe(i,r)||(n.uniform1iv(this.addr,r),Ye(i,r));let o;this.type===n.SAMPLER_2D_SHADOW?o=sh(Nv):o=Lv;for(let a=0;a!==s;++a)e.setTexture2D(t[a]||o,r[a])}function mT(n,t,e){let i=this.cache,s=t.length,r=ih(e,s);qe(i,r)||(n.uniform1iv(this.addr,r),Ye(i,r));for(let o=0;o!==s;++o)e.setTexture3D(t[o]||kv,r[o])}function gT(n,t,e){let i=this.cache,s=t.length,r=ih(e,s);qe(i,r)||(n.uniform1iv(this.addr,r),Ye(i,r));let o;this.type===n.SAMPLER_CUBE_SHADOW?o=sh(Uv):o=Fv;for(let a=0;a!==s;++a)e.setTextureCube(t[a]||o,r[a])}function vT(n,t,e){let i=this.cache,s=t.length,r=ih(e,s);qe(i,r)||(n.uniform1iv(this.addr,r),Ye(i,r));for(let o=0;o!==s;++o)e.setTexture2DArray(t[o]||Ov,r[o])}function _T(n){switch(n){case 5126:return Q1;case 35664:return tT;case 35665:return eT;case 35666:return nT;case 35674:return iT;case 35675:return sT;case 35676:return rT;case 5124:case 35670:return oT;case 35667:case 35671:return aT;case 35668:case 35672:return lT;case 35669:case 35673:return cT;case 5125:return uT;case 36294:return hT;case 36295:return dT;case 36296:return fT;case 35678:case 36198:case 36298:case 36306:case 35682:return pT;case 35679:case 36299:case 36307:return mT;case 35680:case 36300:case 36308:case 36293:return gT;case 36289:case 36303:case 36311:case 36292:return vT}}var $f=class{constructor(t,e,i){this.id=t,this.addr=i,this.cache=[],this.type=e.type,this.setValue=j1(e.type)}},Xf=class{constructor(t,e,i){this.id=t,this.addr=i,this.cache=[],this.type=e.type,this.size=e.size,this.setValue=_T(e.type)}},qf=class{constructor(t){this.id=t,this.seq=[],this.map={}}setValue(t,e,i){let s=this.seq;for(let r=0,o=s.length;r!==o;++r){let a=s[r];a.setValue(t,e[a.id],i)}}},Hf=/(\w+)(\])?(\[|\.)?/g;function vv(n,t){n.seq.push(t),n.map[t.id]=t}function yT(n,t,e){let i=n.name,s=i.length;for(Hf.lastIndex=0;;){let r=Hf.exec(i),o=Hf.lastIndex,a=r[1],l=r[2]==="]",u=r[3];if(l&&(a=a|0),u===void 0||u==="["&&o+2===s){vv(e,u===void 0?new $f(a,n,t):new Xf(a,n,t));break}else{let d=e.map[a];d===void 0&&(d=new qf(a),vv(e,d)),e=d}}}var co=class{constructor(t,e){this.seq=[],this.map={};let i=t.getProgramParameter(e,t.ACTIVE_UNIFORMS);for(let o=0;o<i;++o){let a=t.getActiveUniform(e,o),l=t.getUniformLocation(e,a.name);yT(a,l,this)}let s=[],r=[];for(let o of this.seq)o.type===t.SAMPLER_2D_SHADOW||o.type===t.SAMPLER_CUBE_SHADOW||o.type===t.SAMPLER_2D_ARRAY_SHADOW?s.push(o):r.push(o);s.length>0&&(this.seq=s.concat(r))}setValue(t,e,i,s){let r=this.map[e];r!==void 0&&r.setValue(t,i,s)}setOptional(t,e,i){let s=e[i];s!==void 0&&this.setValue(t,i,s)}static upload(t,e,i,s){for(let r=0,o=e.length;r!==o;++r){let a=e[r],l=i[a.id];l.needsUpdate!==!1&&a.setValue(t,l.value,s)}}static seqWithValue(t,e){let i=[];for(let s=0,r=t.length;s!==r;++s){let o=t[s];o.id in e&&i.push(o)}return i}};function _v(n,t,e){let i=n.createShader(t);return n.shaderSource(i,e),n.compileShader(i),i}var xT=37297,bT=0;function wT(n,t){let e=n.split(`
`),i=[],s=Math.max(t-6,0),r=Math.min(t+6,e.length);for(let o=s;o<r;o++){let a=o+1;i.push(`${a===t?">":" "} ${a}: ${e[o]}`)}return i.join(`
`)}var yv=new Gt;function MT(n){ne._getMatrix(yv,ne.workingColorSpace,n);let t=`mat3( ${yv.elements.map(e=>e.toFixed(4))} )`;switch(ne.getTransfer(n)){case ha:return[t,"LinearTransferOETF"];case de:return[t,"sRGBTransferOETF"];default:return Nt("WebGLProgram: Unsupported color space: ",n),[t,"LinearTransferOETF"]}}function xv(n,t,e){let i=n.getShaderParameter(t,n.COMPILE_STATUS),r=(n.getShaderInfoLog(t)||"").trim();if(i&&r==="")return"";let o=/ERROR: 0:(\d+)/.exec(r);if(o){let a=parseInt(o[1]);return e.toUpperCase()+`

`+r+`

`+wT(n.getShaderSource(t),a)}else return r}function ST(n,t){let e=MT(t);return[`vec4 ${n}( vec4 value ) {`,`	return ${e[1]}( vec4( ${e[0]} * value.rgb, value.a ) );`,"}"].join(`
`)}var TT={[gf]:"Linear",[vf]:"Reinhard",[_f]:"Cineon",[yf]:"ACESFilmic",[bf]:"AgX",[wf]:"Neutral",[xf]:"Custom"};function AT(n,t){let e=TT[t];return e===void 0?(Nt("WebGLProgram: Unsupported toneMapping:",t),"vec3 "+n+"( vec3 color ) { return LinearToneMapping( color ); }"):"vec3 "+n+"( vec3 color ) { return "+e+"ToneMapping( color ); }"}var th=new N;function ET(){ne.getLuminanceCoefficients(th);let n=th.x.toFixed(4),t=th.y.toFixed(4),e=th.z.toFixed(4);return["float luminance( const in vec3 rgb ) {",`	const vec3 weights = vec3( ${n}, ${t}, ${e} );`,"	return dot( weights, rgb );","}"].join(`
`)}function CT(n){return[n.extensionClipCullDistance?"#extension GL_ANGLE_clip_cull_distance : require":"",n.extensionMultiDraw?"#extension GL_ANGLE_multi_draw : require":""].filter(Ka).join(`
`)}function RT(n){let t=[];for(let e in n){let i=n[e];i!==!1&&t.push("#define "+e+" "+i)}return t.join(`
`)}function PT(n,t){let e={},i=n.getProgramParameter(t,n.ACTIVE_ATTRIBUTES);for(let s=0;s<i;s++){let r=n.getActiveAttrib(t,s),o=r.name,a=1;r.type===n.FLOAT_MAT2&&(a=2),r.type===n.FLOAT_MAT3&&(a=3),r.type===n.FLOAT_MAT4&&(a=4),e[o]={type:r.type,location:n.getAttribLocation(t,o),locationSize:a}}return e}function Ka(n){return n!==""}function bv(n,t){let e=t.numSpotLightShadows+t.numSpotLightMaps-t.numSpotLightShadowsWithMaps;return n.replace(/NUM_SUN_LIGHTS/g,t.numSunLights).replace(/NUM_DIR_LIGHTS/g,t.numDirLights).replace(/NUM_SPOT_LIGHTS/g,t.numSpotLights).replace(/NUM_SPOT_LIGHT_MAPS/g,t.numSpotLightMaps).replace(/NUM_SPOT_LIGHT_COORDS/g,e).replace(/NUM_RECT_AREA_LIGHTS/g,t.numRectAreaLights).replace(/NUM_POINT_LIGHTS/g,t.numPointLights).replace(/NUM_HEMI_LIGHTS/g,t.numHemiLights).replace(/NUM_SUN_LIGHT_SHADOWS/g,t.numSunLightShadows).replace(/NUM_DIR_LIGHT_SHADOWS/g,t.numDirLightShadows).replace(/NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS/g,t.numSpotLightShadowsWithMaps).replace(/NUM_SPOT_LIGHT_SHADOWS/g,t.numSpotLightShadows).replace(/NUM_POINT_LIGHT_SHADOWS/g,t.numPointLightShadows).replace(/NUM_LIGHT_PROBE_GRIDS/g,t.numLightProbeGrids)}function wv(n,t){return n.replace(/NUM_CLIPPING_PLANES/g,t.numClippingPlanes).replace(/UNION_CLIPPING_PLANES/g,t.numClippingPlanes-t.numClipIntersection)}var IT=/^[ \t]*#include +<([\w\d./]+)>/gm;function Yf(n){return n.replace(IT,DT)}function DT(n,t){let e=Jt[t];if(e===void 0)throw new Error("THREE.WebGLProgram: Can not resolve #include <"+t+">");return Yf(e)}var LT=/#pragma unroll_loop_start\s+for\s*\(\s*int\s+i\s*=\s*(\d+)\s*;\s*i\s*<\s*(\d+)\s*;\s*i\s*\+\+\s*\)\s*{([\s\S]+?)}\s+#pragma unroll_loop_end/g;function Mv(n){return n.replace(LT,NT)}function NT(n,t,e,i){let s="";for(let r=parseInt(t);r<parseInt(e);r++)s+=i.replace(/\[\s*i\s*\]/g,"[ "+r+" ]").replace(/UNROLLED_LOOP_INDEX/g,r);return s}function Sv(n){let t=`precision ${n.precision} float;
	precision ${n.precision} int;
	precision ${n.precision} sampler2D;
	precision ${n.precision} samplerCube;
	precision ${n.precision} sampler3D;
	precision ${n.precision} sampler2DArray;
	precision ${n.precision} sampler2DShadow;
	precision ${n.precision} samplerCubeShadow;
	precision ${n.precision} sampler2DArrayShadow;
	precision ${n.precision} isampler2D;
	precision ${n.precision} isampler3D;
	precision ${n.precision} isamplerCube;
	precision ${n.precision} isampler2DArray;
	precision ${n.precision} usampler2D;
	precision ${n.precision} usampler3D;
	precision ${n.precision} usamplerCube;
	precision ${n.precision} usampler2DArray;
	`;return n.precision==="highp"?t+=`
#define HIGH_PRECISION`:n.precision==="mediump"?t+=`
#define MEDIUM_PRECISION`:n.precision==="lowp"&&(t+=`
#define LOW_PRECISION`),t}var UT={[Ga]:"SHADOWMAP_TYPE_PCF",[ro]:"SHADOWMAP_TYPE_VSM"};function OT(n){return UT[n.shadowMapType]||"SHADOWMAP_TYPE_BASIC"}var kT={[ao]:"ENVMAP_MODE_REFRACTION"};function FT(n){return n.envMap===!1?"ENVMAP_MODE_REFLECTION":kT[n.envMapMode]||"ENVMAP_MODE_REFLECTION"}var BT={[uu]:"ENVMAP_BLENDING_MULTIPLY",[O0]:"ENVMAP_BLENDING_MIX",[k0]:"ENVMAP_BLENDING_ADD"};function zT(n){return n.envMap===!1?"ENVMAP_BLENDING_NONE":BT[n.combine]||"ENVMAP_BLENDING_NONE"}function VT(n,t,e,i){let s=n.getContext(),r=e.defines,o=e.vertexShader,a=e.fragmentShader,l=OT(e),u=e.envMapPMREM===!0?"ENVMAP_TYPE_PMREM":"ENVMAP_TYPE_CUBE",h=FT(e),d=zT(e),p=CT(e),f=RT(r),g=s.createProgram(),_,v,m=e.glslVersion?"#version "+e.glslVersion+`
`:"";e.isRawShaderMaterial?(_=["#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,f].filter(Ka).join(`
`),_.length>0&&(_+=`
`),v=["#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,f].filter(Ka).join(`
`),v.length>0&&(v+=`
`)):(_=[Sv(e),"#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,f,e.extensionClipCullDistance?"#define USE_CLIP_DISTANCE":"",e.batching?"#define USE_BATCHING":"",e.batchingColor?"#define USE_BATCHING_COLOR":"",e.instancing?"#define USE_INSTANCING":"",e.instancingColor?"#define USE_INSTANCING_COLOR":"",e.instancingMorph?"#define USE_INSTANCING_MORPH":"",e.useFog&&e.fog?"#define USE_FOG":"",e.useFog&&e.fogExp2?"#define FOG_EXP2":"",e.map?"#define USE_MAP":"",e.envMap?"#define USE_ENVMAP":"",e.envMap?"#define "+h:"",e.lightMap?"#define USE_LIGHTMAP":"",e.aoMap?"#define USE_AOMAP":"",e.bumpMap?"#define USE_BUMPMAP":"",e.normalMap?"#define USE_NORMALMAP":"",e.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",e.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",e.displacementMap?"#define USE_DISPLACEMENTMAP":"",e.emissiveMap?"#define USE_EMISSIVEMAP":"",e.anisotropy?"#define USE_ANISOTROPY":"",e.anisotropyMap?"#define USE_ANISOTROPYMAP":"",e.clearcoatMap?"#define USE_CLEARCOATMAP":"",e.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",e.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",e.diffuseRoughnessMap?"#define USE_DIFFUSE_ROUGHNESSMAP":"",e.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",e.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",e.specularMap?"#define USE_SPECULARMAP":"",e.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",e.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",e.roughnessMap?"#define USE_ROUGHNESSMAP":"",e.metalnessMap?"#define USE_METALNESSMAP":"",e.alphaMap?"#define USE_ALPHAMAP":"",e.alphaHash?"#define USE_ALPHAHASH":"",e.transmission?"#define USE_TRANSMISSION":"",e.transmissionMap?"#define USE_TRANSMISSIONMAP":"",e.thicknessMap?"#define USE_THICKNESSMAP":"",e.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",e.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",e.mapUv?"#define MAP_UV "+e.mapUv:"",e.alphaMapUv?"#define ALPHAMAP_UV "+e.alphaMapUv:"",e.lightMapUv?"#define LIGHTMAP_UV "+e.lightMapUv:"",e.aoMapUv?"#define AOMAP_UV "+e.aoMapUv:"",e.emissiveMapUv?"#define EMISSIVEMAP_UV "+e.emissiveMapUv:"",e.bumpMapUv?"#define BUMPMAP_UV "+e.bumpMapUv:"",e.normalMapUv?"#define NORMALMAP_UV "+e.normalMapUv:"",e.displacementMapUv?"#define DISPLACEMENTMAP_UV "+e.displacementMapUv:"",e.metalnessMapUv?"#define METALNESSMAP_UV "+e.metalnessMapUv:"",e.roughnessMapUv?"#define ROUGHNESSMAP_UV "+e.roughnessMapUv:"",e.anisotropyMapUv?"#define ANISOTROPYMAP_UV "+e.anisotropyMapUv:"",e.clearcoatMapUv?"#define CLEARCOATMAP_UV "+e.clearcoatMapUv:"",e.clearcoatNormalMapUv?"#define CLEARCOAT_NORMALMAP_UV "+e.clearcoatNormalMapUv:"",e.clearcoatRoughnessMapUv?"#define CLEARCOAT_ROUGHNESSMAP_UV "+e.clearcoatRoughnessMapUv:"",e.diffuseRoughnessMapUv?"#define DIFFUSE_ROUGHNESSMAP_UV "+e.diffuseRoughnessMapUv:"",e.iridescenceMapUv?"#define IRIDESCENCEMAP_UV "+e.iridescenceMapUv:"",e.iridescenceThicknessMapUv?"#define IRIDESCENCE_THICKNESSMAP_UV "+e.iridescenceThicknessMapUv:"",e.sheenColorMapUv?"#define SHEEN_COLORMAP_UV "+e.sheenColorMapUv:"",e.sheenRoughnessMapUv?"#define SHEEN_ROUGHNESSMAP_UV "+e.sheenRoughnessMapUv:"",e.specularMapUv?"#define SPECULARMAP_UV "+e.specularMapUv:"",e.specularColorMapUv?"#define SPECULAR_COLORMAP_UV "+e.specularColorMapUv:"",e.specularIntensityMapUv?"#define SPECULAR_INTENSITYMAP_UV "+e.specularIntensityMapUv:"",e.transmissionMapUv?"#define TRANSMISSIONMAP_UV "+e.transmissionMapUv:"",e.thicknessMapUv?"#define THICKNESSMAP_UV "+e.thicknessMapUv:"",e.vertexTangents&&e.flatShading===!1?"#define USE_TANGENT":"",e.vertexNormals?"#define HAS_NORMAL":"",e.vertexColors?"#define USE_COLOR":"",e.vertexAlphas?"#define USE_COLOR_ALPHA":"",e.vertexUv1s?"#define USE_UV1":"",e.vertexUv2s?"#define USE_UV2":"",e.vertexUv3s?"#define USE_UV3":"",e.pointsUvs?"#define USE_POINTS_UV":"",e.flatShading?"#define FLAT_SHADED":"",e.skinning?"#define USE_SKINNING":"",e.morphTargets?"#define USE_MORPHTARGETS":"",e.morphNormals&&e.flatShading===!1?"#define USE_MORPHNORMALS":"",e.morphColors?"#define USE_MORPHCOLORS":"",e.morphTargetsCount>0?"#define MORPHTARGETS_TEXTURE_STRIDE "+e.morphTextureStride:"",e.morphTargetsCount>0?"#define MORPHTARGETS_COUNT "+e.morphTargetsCount:"",e.doubleSided?"#define DOUBLE_SIDED":"",e.flipSided?"#define FLIP_SIDED":"",e.shadowMapEnabled?"#define USE_SHADOWMAP":"",e.shadowMapEnabled?"#define "+l:"",e.sizeAttenuation?"#define USE_SIZEATTENUATION":"",e.numLightProbes>0?"#define USE_LIGHT_PROBES":"",e.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",e.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 modelMatrix;","uniform mat4 modelViewMatrix;","uniform mat4 projectionMatrix;","uniform mat4 viewMatrix;","uniform mat3 normalMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;","#ifdef USE_INSTANCING","	attribute mat4 instanceMatrix;","#endif","#ifdef USE_INSTANCING_COLOR","	attribute vec3 instanceColor;","#endif","#ifdef USE_INSTANCING_MORPH","	uniform sampler2D morphTexture;","#endif","attribute vec3 position;","attribute vec3 normal;","attribute vec2 uv;","#ifdef USE_UV1","	attribute vec2 uv1;","#endif","#ifdef USE_UV2","	attribute vec2 uv2;","#endif","#ifdef USE_UV3","	attribute vec2 uv3;","#endif","#ifdef USE_TANGENT","	attribute vec4 tangent;","#endif","#if defined( USE_COLOR_ALPHA )","	attribute vec4 color;","#elif defined( USE_COLOR )","	attribute vec3 color;","#endif","#ifdef USE_SKINNING","	attribute vec4 skinIndex;","	attribute vec4 skinWeight;","#endif",`
`].filter(Ka).join(`
`),v=[Sv(e),"#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,f,e.useFog&&e.fog?"#define USE_FOG":"",e.useFog&&e.fogExp2?"#define FOG_EXP2":"",e.alphaToCoverage?"#define ALPHA_TO_COVERAGE":"",e.map?"#define USE_MAP":"",e.matcap?"#define USE_MATCAP":"",e.envMap?"#define USE_ENVMAP":"",e.envMap?"#define "+u:"",e.envMap?"#define "+h:"",e.envMap?"#define "+d:"",e.envMapPMREM?"#define ENVMAP_MAX_LOD "+e.envMapMaxLod+".0":"",e.envMapPMREM?"#define ENVMAP_SIZE "+e.envMapSize+".0":"",e.lightMap?"#define USE_LIGHTMAP":"",e.aoMap?"#define USE_AOMAP":"",e.bumpMap?"#define USE_BUMPMAP":"",e.normalMap?"#define USE_NORMALMAP":"",e.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",e.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",e.packedNormalMap?"#define USE_PACKED_NORMALMAP":"",e.emissiveMap?"#define USE_EMISSIVEMAP":"",e.anisotropy?"#define USE_ANISOTROPY":"",e.anisotropyMap?"#define USE_ANISOTROPYMAP":"",e.clearcoat?"#define USE_CLEARCOAT":"",e.clearcoatMap?"#define USE_CLEARCOATMAP":"",e.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",e.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",e.diffuseRoughness?"#define USE_DIFFUSE_ROUGHNESS":"",e.diffuseRoughnessMap?"#define USE_DIFFUSE_ROUGHNESSMAP":"",e.dispersion?"#define USE_DISPERSION":"",e.retroreflection?"#define USE_RETROREFLECTION":"",e.iridescence?"#define USE_IRIDESCENCE":"",e.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",e.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",e.specularMap?"#define USE_SPECULARMAP":"",e.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",e.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",e.roughnessMap?"#define USE_ROUGHNESSMAP":"",e.metalnessMap?"#define USE_METALNESSMAP":"",e.alphaMap?"#define USE_ALPHAMAP":"",e.alphaTest?"#define USE_ALPHATEST":"",e.alphaHash?"#define USE_ALPHAHASH":"",e.sheen?"#define USE_SHEEN":"",e.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",e.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",e.transmission?"#define USE_TRANSMISSION":"",e.transmissionMap?"#define USE_TRANSMISSIONMAP":"",e.thicknessMap?"#define USE_THICKNESSMAP":"",e.vertexTangents&&e.flatShading===!1?"#define USE_TANGENT":"",e.vertexColors||e.instancingColor?"#define USE_COLOR":"",e.vertexAlphas||e.batchingColor?"#define USE_COLOR_ALPHA":"",e.vertexUv1s?"#define USE_UV1":"",e.vertexUv2s?"#define USE_UV2":"",e.vertexUv3s?"#define USE_UV3":"",e.pointsUvs?"#define USE_POINTS_UV":"",e.gradientMap?"#define USE_GRADIENTMAP":"",e.flatShading?"#define FLAT_SHADED":"",e.doubleSided?"#define DOUBLE_SIDED":"",e.flipSided?"#define FLIP_SIDED":"",e.shadowMapEnabled?"#define USE_SHADOWMAP":"",e.shadowMapEnabled?"#define "+l:"",e.premultipliedAlpha?"#define PREMULTIPLIED_ALPHA":"",e.numLightProbes>0?"#define USE_LIGHT_PROBES":"",e.decodeVideoTexture?"#define DECODE_VIDEO_TEXTURE":"",e.decodeVideoTextureEmissive?"#define DECODE_VIDEO_TEXTURE_EMISSIVE":"",e.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",e.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 viewMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;",e.toneMapping!==wi?"#define TONE_MAPPING":"",e.toneMapping!==wi?Jt.tonemapping_pars_fragment:"",e.toneMapping!==wi?AT("toneMapping",e.toneMapping):"",e.dithering?"#define DITHERING":"",e.opaque?"#define OPAQUE":"",Jt.colorspace_pars_fragment,ST("linearToOutputTexel",e.outputColorSpace),ET(),e.useDepthPacking?"#define DEPTH_PACKING "+e.depthPacking:"",`
`].filter(Ka).join(`
`)),o=Yf(o),o=bv(o,e),o=wv(o,e),a=Yf(a),a=bv(a,e),a=wv(a,e),o=Mv(o),a=Mv(a),e.isRawShaderMaterial!==!0&&(m=`#version 300 es
`,_=[p,"#define attribute in","#define varying out","#define texture2D texture"].join(`
`)+`
`+_,v=["#define varying in",e.glslVersion===Lf?"":"layout(location = 0) out highp vec4 pc_fragColor;",e.glslVersion===Lf?"":"#define gl_FragColor pc_fragColor","#define gl_FragDepthEXT gl_FragDepth","#define texture2D texture","#define textureCube texture","#define texture2DProj textureProj","#define texture2DLodEXT textureLod","#define texture2DProjLodEXT textureProjLod","#define textureCubeLodEXT textureLod","#define texture2DGradEXT textureGrad","#define texture2DProjGradEXT textureProjGrad","#define textureCubeGradEXT textureGrad"].join(`
`)+`
`+v);let y=m+_+o,M=m+v+a,b=_v(s,s.VERTEX_SHADER,y),E=_v(s,s.FRAGMENT_SHADER,M);s.attachShader(g,b),s.attachShader(g,E),e.index0AttributeName!==void 0?s.bindAttribLocation(g,0,e.index0AttributeName):e.hasPositionAttribute===!0&&s.bindAttribLocation(g,0,"position"),s.linkProgram(g);function A(R){if(n.debug.checkShaderErrors){let P=s.getProgramInfoLog(g)||"",O=s.getShaderInfoLog(b)||"",B=s.getShaderInfoLog(E)||"",I=P.trim(),W=O.trim(),$=B.trim(),F=!0,Q=!0;if(s.getProgramParameter(g,s.LINK_STATUS)===!1)if(F=!1,typeof n.debug.onShaderError=="function")n.debug.onShaderError(s,g,b,E);else{let G=xv(s,b,"vertex"),tt=xv(s,E,"fragment");Bt("WebGLProgram: Shader Error "+s.getError()+" - VALIDATE_STATUS "+s.getProgramParameter(g,s.VALIDATE_STATUS)+`

Material Name: `+R.name+`
Material Type: `+R.type+`

Program Info Log: `+I+`
`+G+`
`+tt)}else I!==""?Nt("WebGLProgram: Program Info Log:",I):(W===""||$==="")&&(Q=!1);Q&&(R.diagnostics={runnable:F,programLog:I,vertexShader:{log:W,prefix:_},fragmentShader:{log:$,prefix:v}})}s.deleteShader(b),s.deleteShader(E),x=new co(s,g),T=PT(s,g)}let x;this.getUniforms=function(){return x===void 0&&A(this),x};let T;this.getAttributes=function(){return T===void 0&&A(this),T};let L=e.rendererExtensionParallelShaderCompile===!1;return this.isReady=function(){return L===!1&&(L=s.getProgramParameter(g,xT)),L},this.destroy=function(){i.releaseStatesOfProgram(this),s.deleteProgram(g),this.program=void 0},this.type=e.shaderType,this.name=e.shaderName,this.id=bT++,this.cacheKey=t,this.usedTimes=1,this.program=g,this.vertexShader=b,this.fragmentShader=E,this}var GT=0,Zf=class{constructor(){this.shaderCache=new Map,this.materialCache=new Map}update(t,e,i){let s=this._getShaderCacheForMaterial(t);return s.has(e)===!1&&(s.add(e),e.usedTimes++),s.has(i)===!1&&(s.add(i),i.usedTimes++),this}remove(t){let e=this.materialCache.get(t);for(let i of e)i.usedTimes--,i.usedTimes===0&&this.shaderCache.delete(i.code);return this.materialCache.delete(t),this}getVertexShaderStage(t){return this._getShaderStage(t.vertexShader)}getFragmentShaderStage(t){return this._getShaderStage(t.fragmentShader)}dispose(){this.shaderCache.clear(),this.materialCache.clear()}_getShaderCacheForMaterial(t){let e=this.materialCache,i=e.get(t);return i===void 0&&(i=new Set,e.set(t,i)),i}_getShaderStage(t){let e=this.shaderCache,i=e.get(t);return i===void 0&&(i=new Jf(t),e.set(t,i)),i}},Jf=class{constructor(t){this.id=GT++,this.code=t,this.usedTimes=0}};function HT(n){return n===Ss||n===Ya||n===Za}function WT(n,t,e,i,s,r){let o=new pa,a=new Zf,l=new Set,u=[],h=new Map,d=i.logarithmicDepthBuffer,p={MeshDepthMaterial:"depth",MeshDistanceMaterial:"distance",MeshNormalMaterial:"normal",MeshBasicMaterial:"basic",MeshLambertMaterial:"lambert",MeshPhongMaterial:"phong",MeshToonMaterial:"toon",MeshStandardMaterial:"physical",MeshPhysicalMaterial:"physical",MeshMatcapMaterial:"matcap",LineBasicMaterial:"basic",LineDashedMaterial:"dashed",PointsMaterial:"points",ShadowMaterial:"shadow",SpriteMaterial:"sprite"};function f(x){return l.add(x),x===0?"uv":`uv${x}`}function g(x,T,L,R,P,O){let B=R.fog,I=P.geometry,W=x.isMeshStandardMaterial||x.isMeshLambertMaterial||x.isMeshPhongMaterial?R.environment:null,$=x.isMeshStandardMaterial||x.isMeshLambertMaterial&&!x.envMap||x.isMeshPhongMaterial&&!x.envMap,F=t.get(x.envMap||W,$),Q=p[x.type],G=i.precision;x.precision!==null&&(G=i.getMaxPrecision(x.precision),G!==x.precision&&Nt("WebGLProgram.getParameters:",x.precision,"not supported, using",G,"instead."));let tt=I.morphAttributes.position||I.morphAttributes.normal||I.morphAttributes.color,et=tt!==void 0?tt.length:0,St=0;I.morphAttributes.position!==void 0&&(St=1),I.morphAttributes.normal!==void 0&&(St=2),I.morphAttributes.color!==void 0&&(St=3);let Ot,Z,gt,wt;if(Q){let yt=Si[Q];Ot=yt.vertexShader,Z=yt.fragmentShader}else{Ot=x.vertexShader,Z=x.fragmentShader;let yt=a.getVertexShaderStage(x),fe=a.getFragmentShaderStage(x);a.update(x,yt,fe),gt=yt.id,wt=fe.id}let It=n.getRenderTarget(),_t=n.state.buffers.depth.getReversed(),zt=P.isInstancedMesh===!0,Le=P.isBatchedMesh===!0,Ut=!!x.map,ae=!!x.matcap,he=!!F,Qt=he&&F.isPMREMTexture===!0,rn=!!x.aoMap,Ve=!!x.lightMap,Tn=!!x.bumpMap&&x.wireframe===!1,Pe=!!x.normalMap,pi=!!x.displacementMap,Je=!!x.emissiveMap,Hn=!!x.metalnessMap,Wn=!!x.roughnessMap,$n=x.anisotropy>0,k=x.clearcoat>0,Xn=x.diffuseRoughness>0,Te=x.dispersion>0,Ae=x.retroreflectivity>0,vt=x.iridescence>0,Ge=x.sheen>0,kt=x.transmission>0,Ht=$n&&!!x.anisotropyMap,C=k&&!!x.clearcoatMap,w=k&&!!x.clearcoatNormalMap,V=k&&!!x.clearcoatRoughnessMap,it=Xn&&!!x.diffuseRoughnessMap,j=vt&&!!x.iridescenceMap,lt=vt&&!!x.iridescenceThicknessMap,pt=Ge&&!!x.sheenColorMap,Y=Ge&&!!x.sheenRoughnessMap,J=!!x.specularMap,ut=!!x.specularColorMap,D=!!x.specularIntensityMap,K=kt&&!!x.transmissionMap,q=kt&&!!x.thicknessMap,ht=!!x.gradientMap,ot=!!x.alphaMap,ct=x.alphaTest>0,Rt=!!x.alphaHash,Zt=!!x.extensions,st=wi;x.toneMapped&&(It===null||It.isXRRenderTarget===!0)&&(st=n.toneMapping);let Dt=Qt?F.isCompressedCubeTexture?F.image[0].mipmaps:F.mipmaps:null,qt={shaderID:Q,shaderType:x.type,shaderName:x.name,vertexShader:Ot,fragmentShader:Z,defines:x.defines,customVertexShaderID:gt,customFragmentShaderID:wt,isRawShaderMaterial:x.isRawShaderMaterial===!0,glslVersion:x.glslVersion,precision:G,batching:Le,batchingColor:Le&&P._colorsTexture!==null,instancing:zt,instancingColor:zt&&P.instanceColor!==null,instancingMorph:zt&&P.morphTexture!==null,outputColorSpace:It===null?n.outputColorSpace:It.isXRRenderTarget===!0?It.texture.colorSpace:ne.workingColorSpace,alphaToCoverage:!!x.alphaToCoverage,map:Ut,matcap:ae,envMap:he,envMapMode:he&&F.mapping,envMapPMREM:Qt,envMapMaxLod:Qt?Dt.length-1:null,envMapSize:Qt?Dt[0].width:null,aoMap:rn,lightMap:Ve,bumpMap:Tn,normalMap:Pe,displacementMap:pi,emissiveMap:Je,normalMapObjectSpace:Pe&&x.normalMapType===z0,normalMapTangentSpace:Pe&&x.normalMapType===Ku,packedNormalMap:Pe&&x.normalMapType===Ku&&HT(x.normalMap.format),metalnessMap:Hn,roughnessMap:Wn,anisotropy:$n,anisotropyMap:Ht,clearcoat:k,clearcoatMap:C,clearcoatNormalMap:w,clearcoatRoughnessMap:V,diffuseRoughness:Xn,diffuseRoughnessMap:it,dispersion:Te,retroreflection:Ae,iridescence:vt,iridescenceMap:j,iridescenceThicknessMap:lt,sheen:Ge,sheenColorMap:pt,sheenRoughnessMap:Y,specularMap:J,specularColorMap:ut,specularIntensityMap:D,transmission:kt,transmissionMap:K,thicknessMap:q,gradientMap:ht,opaque:x.transparent===!1&&x.blending===oo&&x.alphaToCoverage===!1,alphaMap:ot,alphaTest:ct,alphaHash:Rt,combine:x.combine,mapUv:Ut&&f(x.map.channel),aoMapUv:rn&&f(x.aoMap.channel),lightMapUv:Ve&&f(x.lightMap.channel),bumpMapUv:Tn&&f(x.bumpMap.channel),normalMapUv:Pe&&f(x.normalMap.channel),displacementMapUv:pi&&f(x.displacementMap.channel),emissiveMapUv:Je&&f(x.emissiveMap.channel),metalnessMapUv:Hn&&f(x.metalnessMap.channel),roughnessMapUv:Wn&&f(x.roughnessMap.channel),anisotropyMapUv:Ht&&f(x.anisotropyMap.channel),clearcoatMapUv:C&&f(x.clearcoatMap.channel),clearcoatNormalMapUv:w&&f(x.clearcoatNormalMap.channel),clearcoatRoughnessMapUv:V&&f(x.clearcoatRoughnessMap.channel),diffuseRoughnessMapUv:it&&f(x.diffuseRoughnessMap.channel),iridescenceMapUv:j&&f(x.iridescenceMap.channel),iridescenceThicknessMapUv:lt&&f(x.iridescenceThicknessMap.channel),sheenColorMapUv:pt&&f(x.sheenColorMap.channel),sheenRoughnessMapUv:Y&&f(x.sheenRoughnessMap.channel),specularMapUv:J&&f(x.specularMap.channel),specularColorMapUv:ut&&f(x.specularColorMap.channel),specularIntensityMapUv:D&&f(x.specularIntensityMap.channel),transmissionMapUv:K&&f(x.transmissionMap.channel),thicknessMapUv:q&&f(x.thicknessMap.channel),alphaMapUv:ot&&f(x.alphaMap.channel),vertexTangents:!!I.attributes.tangent&&(Pe||$n),vertexNormals:!!I.attributes.normal,vertexColors:x.vertexColors,vertexAlphas:x.vertexColors===!0&&!!I.attributes.color&&I.attributes.color.itemSize===4,pointsUvs:P.isPoints===!0&&!!I.attributes.uv&&(Ut||ot),fog:!!B,useFog:x.fog===!0,fogExp2:!!B&&B.isFogExp2,flatShading:x.wireframe===!1&&(x.flatShading===!0||I.attributes.normal===void 0&&Pe===!1&&(x.isMeshLambertMaterial||x.isMeshPhongMaterial||x.isMeshStandardMaterial||x.isMeshPhysicalMaterial)),sizeAttenuation:x.sizeAttenuation===!0,logarithmicDepthBuffer:d,reversedDepthBuffer:_t,skinning:P.isSkinnedMesh===!0,hasPositionAttribute:I.attributes.position!==void 0,morphTargets:I.morphAttributes.position!==void 0,morphNormals:I.morphAttributes.normal!==void 0,morphColors:I.morphAttributes.color!==void 0,morphTargetsCount:et,morphTextureStride:St,numSunLights:T.sun.length,numDirLights:T.directional.length,numPointLights:T.point.length,numSpotLights:T.spot.length,numSpotLightMaps:T.spotLightMap.length,numRectAreaLights:T.rectArea.length,numHemiLights:T.hemi.length,numSunLightShadows:T.sunShadowMap.length,numDirLightShadows:T.directionalShadowMap.length,numPointLightShadows:T.pointShadowMap.length,numSpotLightShadows:T.spotShadowMap.length,numSpotLightShadowsWithMaps:T.numSpotLightShadowsWithMaps,numLightProbes:T.numLightProbes,numLightProbeGrids:O.filter(yt=>yt.texture!==null).length,numClippingPlanes:r.numPlanes,numClipIntersection:r.numIntersection,dithering:x.dithering,shadowMapEnabled:n.shadowMap.enabled&&L.length>0,shadowMapType:n.shadowMap.type,toneMapping:st,decodeVideoTexture:Ut&&x.map.isVideoTexture===!0&&ne.getTransfer(x.map.colorSpace)===de,decodeVideoTextureEmissive:Je&&x.emissiveMap.isVideoTexture===!0&&ne.getTransfer(x.emissiveMap.colorSpace)===de,premultipliedAlpha:x.premultipliedAlpha,doubleSided:x.side===pn,flipSided:x.side===wn,useDepthPacking:x.depthPacking>=0,depthPacking:x.depthPacking||0,index0AttributeName:x.index0AttributeName,extensionClipCullDistance:Zt&&x.extensions.clipCullDistance===!0&&e.has("WEBGL_clip_cull_distance"),extensionMultiDraw:(Zt&&x.extensions.multiDraw===!0||Le)&&e.has("WEBGL_multi_draw"),rendererExtensionParallelShaderCompile:e.has("KHR_parallel_shader_compile"),customProgramCacheKey:x.customProgramCacheKey()};return qt.vertexUv1s=l.has(1),qt.vertexUv2s=l.has(2),qt.vertexUv3s=l.has(3),l.clear(),qt}function _(x){let T=[];if(x.shaderID?T.push(x.shaderID):(T.push(x.customVertexShaderID),T.push(x.customFragmentShaderID)),x.defines!==void 0)for(let L in x.defines)T.push(L),T.push(x.defines[L]);return x.isRawShaderMaterial===!1&&(v(T,x),m(T,x),T.push(n.outputColorSpace)),T.push(x.customProgramCacheKey),T.join()}function v(x,T){x.push(T.precision),x.push(T.outputColorSpace),x.push(T.envMapMode),x.push(T.envMapPMREM),x.push(T.envMapMaxLod),x.push(T.envMapSize),x.push(T.mapUv),x.push(T.alphaMapUv),x.push(T.lightMapUv),x.push(T.aoMapUv),x.push(T.bumpMapUv),x.push(T.normalMapUv),x.push(T.displacementMapUv),x.push(T.emissiveMapUv),x.push(T.metalnessMapUv),x.push(T.roughnessMapUv),x.push(T.anisotropyMapUv),x.push(T.clearcoatMapUv),x.push(T.clearcoatNormalMapUv),x.push(T.clearcoatRoughnessMapUv),x.push(T.diffuseRoughnessMapUv),x.push(T.iridescenceMapUv),x.push(T.iridescenceThicknessMapUv),x.push(T.sheenColorMapUv),x.push(T.sheenRoughnessMapUv),x.push(T.specularMapUv),x.push(T.specularColorMapUv),x.push(T.specularIntensityMapUv),x.push(T.transmissionMapUv),x.push(T.thicknessMapUv),x.push(T.combine),x.push(T.fogExp2),x.push(T.sizeAttenuation),x.push(T.morphTargetsCount),x.push(T.numSunLights),x.push(T.numDirLights),x.push(T.numPointLights),x.push(T.numSpotLights),x.push(T.numSpotLightMaps),x.push(T.numHemiLights),x.push(T.numRectAreaLights),x.push(T.numSunLightShadows),x.push(T.numDirLightShadows),x.push(T.numPointLightShadows),x.push(T.numSpotLightShadows),x.push(T.numSpotLightShadowsWithMaps),x.push(T.numLightProbes),x.push(T.numLightProbeGrids),x.push(T.shadowMapType),x.push(T.toneMapping),x.push(T.numClippingPlanes),x.push(T.numClipIntersection),x.push(T.depthPacking)}function m(x,T){o.disableAll(),T.instancing&&o.enable(0),T.instancingColor&&o.enable(1),T.instancingMorph&&o.enable(2),T.matcap&&o.enable(3),T.envMap&&o.enable(4),T.normalMapObjectSpace&&o.enable(5),T.normalMapTangentSpace&&o.enable(6),T.clearcoat&&o.enable(7),T.iridescence&&o.enable(8),T.alphaTest&&o.enable(9),T.vertexColors&&o.enable(10),T.vertexAlphas&&o.enable(11),T.vertexUv1s&&o.enable(12),T.vertexUv2s&&o.enable(13),T.vertexUv3s&&o.enable(14),T.vertexTangents&&o.enable(15),T.anisotropy&&o.enable(16),T.alphaHash&&o.enable(17),T.batching&&o.enable(18),T.dispersion&&o.enable(19),T.retroreflection&&o.enable(24),T.diffuseRoughness&&o.enable(25),T.batchingColor&&o.enable(20),T.gradientMap&&o.enable(21),T.packedNormalMap&&o.enable(22),T.vertexNormals&&o.enable(23),x.push(o.mask),o.disableAll(),T.fog&&o.enable(0),T.useFog&&o.enable(1),T.flatShading&&o.enable(2),T.logarithmicDepthBuffer&&o.enable(3),T.reversedDepthBuffer&&o.enable(4),T.skinning&&o.enable(5),T.morphTargets&&o.enable(6),T.morphNormals&&o.enable(7),T.morphColors&&o.enable(8),T.premultipliedAlpha&&o.enable(9),T.shadowMapEnabled&&o.enable(10),T.doubleSided&&o.enable(11),T.flipSided&&o.enable(12),T.useDepthPacking&&o.enable(13),T.dithering&&o.enable(14),T.transmission&&o.enable(15),T.sheen&&o.enable(16),T.opaque&&o.enable(17),T.pointsUvs&&o.enable(18),T.decodeVideoTexture&&o.enable(19),T.decodeVideoTextureEmissive&&o.enable(20),T.alphaToCoverage&&o.enable(21),T.numLightProbeGrids>0&&o.enable(22),T.hasPositionAttribute&&o.enable(23),x.push(o.mask)}function y(x){let T=p[x.type],L;if(T){let R=Si[T];L=rv.clone(R.uniforms)}else L=x.uniforms;return L}function M(x,T){let L=h.get(T);return L!==void 0?++L.usedTimes:(L=new VT(n,T,x,s),u.push(L),h.set(T,L)),L}function b(x){if(--x.usedTimes===0){let T=u.indexOf(x);u[T]=u[u.length-1],u.pop(),h.delete(x.cacheKey),x.destroy()}}function E(x){a.remove(x)}function A(){a.dispose()}return{getParameters:g,getProgramCacheKey:_,getUniforms:y,acquireProgram:M,releaseProgram:b,releaseShaderCache:E,programs:u,dispose:A}}function $T(){let n=new WeakMap;function t(o){return n.has(o)}function e(o){let a=n.get(o);return a===void 0&&(a={},n.set(o,a)),a}function i(o){n.delete(o)}function s(o,a,l){n.get(o)[a]=l}function r(){n=new WeakMap}return{has:t,get:e,remove:i,update:s,dispose:r}}function XT(n,t){return n.groupOrder!==t.groupOrder?n.groupOrder-t.groupOrder:n.renderOrder!==t.renderOrder?n.renderOrder-t.renderOrder:n.material.id!==t.material.id?n.material.id-t.material.id:n.materialVariant!==t.materialVariant?n.materialVariant-t.materialVariant:n.z!==t.z?n.z-t.z:n.id-t.id}function Tv(n,t){return n.groupOrder!==t.groupOrder?n.groupOrder-t.groupOrder:n.renderOrder!==t.renderOrder?n.renderOrder-t.renderOrder:n.z!==t.z?t.z-n.z:n.id-t.id}function Av(){let n=[],t=0,e=[],i=[],s=[];function r(){t=0,e.length=0,i.length=0,s.length=0}function o(p){let f=0;return p.isInstancedMesh&&(f+=2),p.isSkinnedMesh&&(f+=1),f}function a(p,f,g,_,v,m){let y=n[t];return y===void 0?(y={id:p.id,object:p,geometry:f,material:g,materialVariant:o(p),groupOrder:_,renderOrder:p.renderOrder,z:v,group:m},n[t]=y):(y.id=p.id,y.object=p,y.geometry=f,y.material=g,y.materialVariant=o(p),y.groupOrder=_,y.renderOrder=p.renderOrder,y.z=v,y.group=m),t++,y}function l(p,f,g,_,v,m,y){y.reversedDepth===!0&&(v=-v);let M=a(p,f,g,_,v,m);g.transmission>0?i.push(M):g.transparent===!0?s.push(M):e.push(M)}function u(p,f,g,_,v,m){let y=a(p,f,g,_,v,m);g.transmission>0?i.unshift(y):g.transparent===!0?s.unshift(y):e.unshift(y)}function h(p,f){e.length>1&&e.sort(p||XT),i.length>1&&i.sort(f||Tv),s.length>1&&s.sort(f||Tv)}function d(){for(let p=t,f=n.length;p<f;p++){let g=n[p];if(g.id===null)break;g.id=null,g.object=null,g.geometry=null,g.material=null,g.group=null}}return{opaque:e,transmissive:i,transparent:s,init:r,push:l,unshift:u,finish:d,sort:h}}function qT(){let n=new WeakMap;function t(i,s){let r=n.get(i),o;return r===void 0?(o=new Av,n.set(i,[o])):s>=r.length?(o=new Av,r.push(o)):o=r[s],o}function e(){n=new WeakMap}return{get:t,dispose:e}}function YT(){let n={};return{get:function(t){if(n[t.id]!==void 0)return n[t.id];let e;switch(t.type){case"SunLight":case"DirectionalLight":e={direction:new N,color:new Xt};break;case"SpotLight":e={position:new N,direction:new N,color:new Xt,distance:0,coneCos:0,penumbraCos:0,decay:0};break;case"PointLight":e={position:new N,color:new Xt,distance:0,decay:0};break;case"HemisphereLight":e={direction:new N,skyColor:new Xt,groundColor:new Xt};break;case"RectAreaLight":e={color:new Xt,position:new N,halfWidth:new N,halfHeight:new N};break}return n[t.id]=e,e}}}function ZT(){let n={};return{get:function(t){if(n[t.id]!==void 0)return n[t.id];let e;switch(t.type){case"SunLight":case"DirectionalLight":e={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new at};break;case"SpotLight":e={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new at};break;case"PointLight":e={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new at,shadowCameraNear:1,shadowCameraFar:1e3};break}return n[t.id]=e,e}}}var JT=0;function KT(n,t){return(t.castShadow?2:0)-(n.castShadow?2:0)+(t.map?1:0)-(n.map?1:0)}function jT(n){let t=new YT,e=ZT(),i={version:0,hash:{sunLength:-1,directionalLength:-1,pointLength:-1,spotLength:-1,rectAreaLength:-1,hemiLength:-1,numSunShadows:-1,numDirectionalShadows:-1,numPointShadows:-1,numSpotShadows:-1,numSpotMaps:-1,numLightProbes:-1},ambient:[0,0,0],probe:[],sun:[],sunShadow:[],sunShadowMap:[],sunShadowMatrix:[],sunShadowCascade:[],directional:[],directionalShadow:[],directionalShadowMap:[],directionalShadowMatrix:[],spot:[],spotLightMap:[],spotShadow:[],spotShadowMap:[],spotLightMatrix:[],rectArea:[],rectAreaLTC1:null,rectAreaLTC2:null,point:[],pointShadow:[],pointShadowMap:[],pointShadowMatrix:[],hemi:[],numSpotLightShadowsWithMaps:0,numLightProbes:0};for(let u=0;u<9;u++)i.probe.push(new N);let s=new N,r=new oe,o=new oe;function a(u){let h=0,d=0,p=0;for(let O=0;O<9;O++)i.probe[O].set(0,0,0);let f=0,g=0,_=0,v=0,m=0,y=0,M=0,b=0,E=0,A=0,x=0,T=0,L=0,R=0;u.sort(KT);for(let O=0,B=u.length;O<B;O++){let I=u[O],W=I.color,$=I.intensity,F=I.distance,Q=null;if(I.shadow&&I.shadow.map&&(I.shadow.map.texture.format===Ss?Q=I.shadow.map.texture:Q=I.shadow.map.depthTexture||I.shadow.map.texture),I.isAmbientLight)h+=W.r*$,d+=W.g*$,p+=W.b*$;else if(I.isLightProbe){for(let G=0;G<9;G++)i.probe[G].addScaledVector(I.sh.coefficients[G],$);R++}else if(I.isSunLight){let G=t.get(I);if(G.color.copy(I.color).multiplyScalar(I.intensity),I.castShadow){let tt=I.shadow,et=e.get(I);et.shadowIntensity=tt.intensity,et.shadowBias=tt.bias,et.shadowNormalBias=tt.normalBias,et.shadowRadius=tt.radius,et.shadowMapSize.copy(tt.mapSize).multiply(tt.getFrameExtents()),i.sunShadow[g]=et,i.sunShadowMap[g]=Q;let St=tt.getViewportCount();for(let Ot=0;Ot<St;Ot++)i.sunShadowMatrix[_+Ot]=tt.getMatrix(Ot),i.sunShadowCascade[_+Ot]=tt._cascadeData[Ot];_+=St,g++}i.sun[f]=G,f++}else if(I.isDirectionalLight){let G=t.get(I);if(G.color.copy(I.color).multiplyScalar(I.intensity),I.castShadow){let tt=I.shadow,et=e.get(I);et.shadowIntensity=tt.intensity,et.shadowBias=tt.bias,et.shadowNormalBias=tt.normalBias,et.shadowRadius=tt.radius,et.shadowMapSize=tt.mapSize,i.directionalShadow[v]=et,i.directionalShadowMap[v]=Q,i.directionalShadowMatrix[v]=I.shadow.matrix,E++}i.directional[v]=G,v++}else if(I.isSpotLight){let G=t.get(I);G.position.setFromMatrixPosition(I.matrixWorld),G.color.copy(W).multiplyScalar($),G.distance=F,G.coneCos=Math.cos(I.angle),G.penumbraCos=Math.cos(I.angle*(1-I.penumbra)),G.decay=I.decay,i.spot[y]=G;let tt=I.shadow;if(I.map&&(i.spotLightMap[T]=I.map,T++,tt.updateMatrices(I),I.castShadow&&L++),i.spotLightMatrix[y]=tt.matrix,I.castShadow){let et=e.get(I);et.shadowIntensity=tt.intensity,et.shadowBias=tt.bias,et.shadowNormalBias=tt.normalBias,et.shadowRadius=tt.radius,et.shadowMapSize=tt.mapSize,i.spotShadow[y]=et,i.spotShadowMap[y]=Q,x++}y++}else if(I.isRectAreaLight){let G=t.get(I);G.color.copy(W).multiplyScalar($),G.halfWidth.set(I.width*.5,0,0),G.halfHeight.set(0,I.height*.5,0),i.rectArea[M]=G,M++}else if(I.isPointLight){let G=t.get(I);if(G.color.copy(I.color).multiplyScalar(I.intensity),G.distance=I.distance,G.decay=I.decay,I.castShadow){let tt=I.shadow,et=e.get(I);et.shadowIntensity=tt.intensity,et.shadowBias=tt.bias,et.shadowNormalBias=tt.normalBias,et.shadowRadius=tt.radius,et.shadowMapSize=tt.mapSize,et.shadowCameraNear=tt.camera.near,et.shadowCameraFar=tt.camera.far,i.pointShadow[m]=et,i.pointShadowMap[m]=Q,i.pointShadowMatrix[m]=I.shadow.matrix,A++}i.point[m]=G,m++}else if(I.isHemisphereLight){let G=t.get(I);G.skyColor.copy(I.color).multiplyScalar($),G.groundColor.copy(I.groundColor).multiplyScalar($),i.hemi[b]=G,b++}}M>0&&(n.has("OES_texture_float_linear")===!0?(i.rectAreaLTC1=xt.LTC_FLOAT_1,i.rectAreaLTC2=xt.LTC_FLOAT_2):(i.rectAreaLTC1=xt.LTC_HALF_1,i.rectAreaLTC2=xt.LTC_HALF_2)),i.ambient[0]=h,i.ambient[1]=d,i.ambient[2]=p;let P=i.hash;(P.sunLength!==f||P.directionalLength!==v||P.pointLength!==m||P.spotLength!==y||P.rectAreaLength!==M||P.hemiLength!==b||P.numSunShadows!==g||P.numDirectionalShadows!==E||P.numPointShadows!==A||P.numSpotShadows!==x||P.numSpotMaps!==T||P.numLightProbes!==R)&&(i.sun.length=f,i.directional.length=v,i.spot.length=y,i.rectArea.length=M,i.point.length=m,i.hemi.length=b,i.sunShadow.length=g,i.sunShadowMap.length=g,i.sunShadowMatrix.length=_,i.sunShadowCascade.length=_,i.directionalShadow.length=E,i.directionalShadowMap.length=E,i.directionalShadowMatrix.length=E,i.pointShadow.length=A,i.pointShadowMap.length=A,i.pointShadowMatrix.length=A,i.spotShadow.length=x,i.spotShadowMap.length=x,i.spotLightMatrix.length=x+T-L,i.spotLightMap.length=T,i.numSpotLightShadowsWithMaps=L,i.numLightProbes=R,P.sunLength=f,P.directionalLength=v,P.pointLength=m,P.spotLength=y,P.rectAreaLength=M,P.hemiLength=b,P.numSunShadows=g,P.numDirectionalShadows=E,P.numPointShadows=A,P.numSpotShadows=x,P.numSpotMaps=T,P.numLightProbes=R,i.version=JT++)}function l(u,h){let d=0,p=0,f=0,g=0,_=0,v=0,m=h.matrixWorldInverse;for(let y=0,M=u.length;y<M;y++){let b=u[y];if(b.isSunLight){let E=i.sun[d];E.direction.setFromMatrixPosition(b.matrixWorld),E.direction.transformDirection(m),d++}else if(b.isDirectionalLight){let E=i.directional[p];E.direction.setFromMatrixPosition(b.matrixWorld),s.setFromMatrixPosition(b.target.matrixWorld),E.direction.sub(s),E.direction.transformDirection(m),p++}else if(b.isSpotLight){let E=i.spot[g];E.position.setFromMatrixPosition(b.matrixWorld),E.position.applyMatrix4(m),E.direction.setFromMatrixPosition(b.matrixWorld),s.setFromMatrixPosition(b.target.matrixWorld),E.direction.sub(s),E.direction.transformDirection(m),g++}else if(b.isRectAreaLight){let E=i.rectArea[_];E.position.setFromMatrixPosition(b.matrixWorld),E.position.applyMatrix4(m),o.identity(),r.copy(b.matrixWorld),r.premultiply(m),o.extractRotation(r),E.halfWidth.set(b.width*.5,0,0),E.halfHeight.set(0,b.height*.5,0),E.halfWidth.applyMatrix4(o),E.halfHeight.applyMatrix4(o),_++}else if(b.isPointLight){let E=i.point[f];E.position.setFromMatrixPosition(b.matrixWorld),E.position.applyMatrix4(m),f++}else if(b.isHemisphereLight){let E=i.hemi[v];E.direction.setFromMatrixPosition(b.matrixWorld),E.direction.transformDirection(m),v++}}}return{setup:a,setupView:l,state:i}}function Ev(n){let t=new jT(n),e=[],i=[],s=[];function r(d){h.camera=d,e.length=0,i.length=0,s.length=0}function o(d){d.isLightProbeGrid?s.push(d):e.push(d)}function a(d){i.push(d)}function l(){t.setup(e),s.sort((d,p)=>d.priority-p.priority||d.id-p.id)}function u(d){t.setupView(e,d)}let h={lightsArray:e,shadowsArray:i,lightProbeGridArray:s,camera:null,lights:t,transmissionRenderTarget:{},textureUnits:0};return{init:r,state:h,setupLights:l,setupLightsView:u,pushLight:o,pushShadow:a}}function QT(n){let t=new WeakMap;function e(s,r=0){let o=t.get(s),a;return o===void 0?(a=new Ev(n),t.set(s,[a])):r>=o.length?(a=new Ev(n),o.push(a)):a=o[r],a}function i(){t=new WeakMap}return{get:e,dispose:i}}var tA=`void main() {
	gl_Position = vec4( position, 1.0 );
}`,eA=`uniform sampler2D shadow_pass;
uniform vec2 resolution;
uniform float radius;
void main() {
	const float samples = float( VSM_SAMPLES );
	float mean = 0.0;
	float squared_mean = 0.0;
	float uvStride = samples <= 1.0 ? 0.0 : 2.0 / ( samples - 1.0 );
	float uvStart = samples <= 1.0 ? 0.0 : - 1.0;
	for ( float i = 0.0; i < samples; i ++ ) {
		float uvOffset = uvStart + i * uvStride;
		#ifdef HORIZONTAL_PASS
			vec2 distribution = texture2D( shadow_pass, ( gl_FragCoord.xy + vec2( uvOffset, 0.0 ) * radius ) / resolution ).rg;
			mean += distribution.x;
			squared_mean += distribution.y * distribution.y + distribution.x * distribution.x;
		#else
			float depth = texture2D( shadow_pass, ( gl_FragCoord.xy + vec2( 0.0, uvOffset ) * radius ) / resolution ).r;
			mean += depth;
			squared_mean += depth * depth;
		#endif
	}
	mean = mean / samples;
	squared_mean = squared_mean / samples;
	float std_dev = sqrt( max( 0.0, squared_mean - mean * mean ) );
	gl_FragColor = vec4( mean, std_dev, 0.0, 1.0 );
}`,nA=[new N(1,0,0),new N(-1,0,0),new N(0,1,0),new N(0,-1,0),new N(0,0,1),new N(0,0,-1)],iA=[new N(0,-1,0),new N(0,-1,0),new N(0,0,1),new N(0,0,-1),new N(0,-1,0),new N(0,-1,0)],Cv=new oe,Ja=new N,Wf=new N;function sA(n,t,e){let i=new fs,s=new at,r=new at,o=new Re,a=new Jc,l=new Kc,u={},h=e.maxTextureSize,d={[ws]:wn,[wn]:ws,[pn]:pn},p=new Vn({defines:{VSM_SAMPLES:8},uniforms:{shadow_pass:{value:null},resolution:{value:new at},radius:{value:4}},vertexShader:tA,fragmentShader:eA}),f=p.clone();f.defines.HORIZONTAL_PASS=1;let g=new me;g.setAttribute("position",new $e(new Float32Array([-1,-1,.5,3,-1,.5,-1,3,.5]),3));let _=new Oe(g,p),v=this;this.enabled=!1,this.autoUpdate=!0,this.needsUpdate=!1,this.type=Ga;let m=this.type;this.render=function(A,x,T){if(v.enabled===!1||v.autoUpdate===!1&&v.needsUpdate===!1||A.length===0)return;this.type===v0&&(Nt("WebGLShadowMap: PCFSoftShadowMap has been removed. Using PCFShadowMap instead."),this.type=Ga);let L=n.getRenderTarget(),R=n.getActiveCubeFace(),P=n.getActiveMipmapLevel(),O=n.state;O.setBlending(Js),O.buffers.depth.getReversed()===!0?O.buffers.color.setClear(0,0,0,0):O.buffers.color.setClear(1,1,1,1),O.buffers.depth.setTest(!0),O.setScissorTest(!1);let B=m!==this.type;B&&x.traverse(function(I){I.material&&(Array.isArray(I.material)?I.material.forEach(W=>W.needsUpdate=!0):I.material.needsUpdate=!0)});for(let I=0,W=A.length;I<W;I++){let $=A[I],F=$.shadow;if(F===void 0){Nt("WebGLShadowMap:",$,"has no shadow.");continue}if(F.autoUpdate===!1&&F.needsUpdate===!1)continue;s.copy(F.mapSize);let Q=F.getFrameExtents();s.multiply(Q),r.copy(F.mapSize),(s.x>h||s.y>h)&&(s.x>h&&(r.x=Math.floor(h/Q.x),s.x=r.x*Q.x,F.mapSize.x=r.x),s.y>h&&(r.y=Math.floor(h/Q.y),s.y=r.y*Q.y,F.mapSize.y=r.y));let G=n.state.buffers.depth.getReversed();if(F.camera._reversedDepth=G,F.map===null||B===!0){if(F.map!==null&&(F.map.depthTexture!==null&&(F.map.depthTexture.dispose(),F.map.depthTexture=null),F.map.dispose()),this.type===ro){if($.isPointLight){Nt("WebGLShadowMap: VSM shadow maps are not supported for PointLights. Use PCF or BasicShadowMap instead.");continue}F.map=new Bn(s.x,s.y,{format:Ss,type:di,minFilter:bn,magFilter:bn,generateMipmaps:!1}),F.map.texture.name=$.name+".shadowMap",F.map.depthTexture=new Xi(s.x,s.y,jn),F.map.depthTexture.name=$.name+".shadowMapDepth",F.map.depthTexture.format=Wi,F.map.depthTexture.compareFunction=null,F.map.depthTexture.minFilter=tn,F.map.depthTexture.magFilter=tn}else $.isPointLight?(F.map=new ja(s.x),F.map.depthTexture=new wa(s.x,hi)):(F.map=new Bn(s.x,s.y),F.map.depthTexture=new Xi(s.x,s.y,hi)),F.map.depthTexture.name=$.name+".shadowMap",F.map.depthTexture.format=Wi,this.type===Ga?(F.map.depthTexture.compareFunction=G?If:Pf,F.map.depthTexture.minFilter=bn,F.map.depthTexture.magFilter=bn):(F.map.depthTexture.compareFunction=null,F.map.depthTexture.minFilter=tn,F.map.depthTexture.magFilter=tn);F.camera.updateProjectionMatrix()}F.map.isWebGLCubeRenderTarget!==!0&&(F.map.width!==s.x||F.map.height!==s.y)&&F.map.setSize(s.x,s.y);let tt=F.map.isWebGLCubeRenderTarget?6:F.getViewportCount();$.isPointLight!==!0&&F.updateMatrices($,T);let et=(F.camera.layers.mask&4294967294)!==0?F.camera.layers:T.layers;for(let St=0;St<tt;St++){let Ot=F.getCamera(St);if($.isPointLight){let Z=F.camera,gt=F.matrix,wt=$.distance||Z.far;wt!==Z.far&&(Z.far=wt,Z.updateProjectionMatrix()),Ja.setFromMatrixPosition($.matrixWorld),Z.position.copy(Ja),Wf.copy(Z.position),Wf.add(nA[St]),Z.up.copy(iA[St]),Z.lookAt(Wf),Z.updateMatrixWorld(),gt.makeTranslation(-Ja.x,-Ja.y,-Ja.z),Cv.multiplyMatrices(Z.projectionMatrix,Z.matrixWorldInverse),F._frustum.setFromProjectionMatrix(Cv,Z.coordinateSystem,Z.reversedDepth)}if(F.map.isWebGLCubeRenderTarget)n.setRenderTarget(F.map,St),n.clear();else{St===0&&(n.setRenderTarget(F.map),n.clear());let Z=F.getViewport(St);o.set(r.x*Z.x,r.y*Z.y,r.x*Z.z,r.y*Z.w),O.viewport(o)}i=F.getFrustum(St),b(x,T,Ot,$,et,this.type)}F.isPointLightShadow!==!0&&this.type===ro&&y(F,T),F.needsUpdate=!1}m=this.type,v.needsUpdate=!1,n.setRenderTarget(L,R,P)};function y(A,x){let T=t.update(_);p.defines.VSM_SAMPLES!==A.blurSamples&&(p.defines.VSM_SAMPLES=A.blurSamples,f.defines.VSM_SAMPLES=A.blurSamples,p.needsUpdate=!0,f.needsUpdate=!0),A.mapPass===null?A.mapPass=new Bn(s.x,s.y,{format:Ss,type:di}):(A.mapPass.width!==A.map.width||A.mapPass.height!==A.map.height)&&A.mapPass.setSize(A.map.width,A.map.height),p.uniforms.shadow_pass.value=A.map.depthTexture,p.uniforms.resolution.value.set(A.map.width,A.map.height),p.uniforms.radius.value=A.radius,n.setRenderTarget(A.mapPass),n.clear(),n.renderBufferDirect(x,null,T,p,_,null),f.uniforms.shadow_pass.value=A.mapPass.texture,f.uniforms.resolution.value.set(A.map.width,A.map.height),f.uniforms.radius.value=A.radius,n.setRenderTarget(A.map),n.clear(),n.renderBufferDirect(x,null,T,f,_,null)}function M(A,x,T,L){let R=null,P=T.isPointLight===!0?A.customDistanceMaterial:A.customDepthMaterial;if(P!==void 0)R=P;else if(R=T.isPointLight===!0?l:a,n.localClippingEnabled&&x.clipShadows===!0&&Array.isArray(x.clippingPlanes)&&x.clippingPlanes.length!==0||x.displacementMap&&x.displacementScale!==0||x.alphaMap&&x.alphaTest>0||x.map&&x.alphaTest>0||x.alphaToCoverage===!0){let O=R.uuid,B=x.uuid,I=u[O];I===void 0&&(I={},u[O]=I);let W=I[B];W===void 0&&(W=R.clone(),I[B]=W,x.addEventListener("dispose",E)),R=W}if(R.visible=x.visible,R.wireframe=x.wireframe,L===ro?R.side=x.shadowSide!==null?x.shadowSide:x.side:R.side=x.shadowSide!==null?x.shadowSide:d[x.side],R.alphaMap=x.alphaMap,R.alphaTest=x.alphaToCoverage===!0?.5:x.alphaTest,R.map=x.map,R.clipShadows=x.clipShadows,R.clippingPlanes=x.clippingPlanes,R.clipIntersection=x.clipIntersection,R.displacementMap=x.displacementMap,R.displacementScale=x.displacementScale,R.displacementBias=x.displacementBias,R.wireframeLinewidth=x.wireframeLinewidth,R.linewidth=x.linewidth,T.isPointLight===!0&&R.isMeshDistanceMaterial===!0){let O=n.properties.get(R);O.light=T}return R}function b(A,x,T,L,R,P){if(A.visible===!1)return;if(A.layers.test(R)&&(A.isMesh||A.isLine||A.isPoints)&&(A.castShadow||A.receiveShadow&&P===ro)&&(!A.frustumCulled||A.intersectsFrustum(i))){A.modelViewMatrix.multiplyMatrices(T.matrixWorldInverse,A.matrixWorld);let I=t.update(A),W=A.material;if(Array.isArray(W)){let $=I.groups;for(let F=0,Q=$.length;F<Q;F++){let G=$[F],tt=W[G.materialIndex];if(tt&&tt.visible){let et=M(A,tt,L,P);A.onBeforeShadow(n,A,x,T,I,et,G),n.renderBufferDirect(T,null,I,et,A,G),A.onAfterShadow(n,A,x,T,I,et,G)}}}else if(W.visible){let $=M(A,W,L,P);A.onBeforeShadow(n,A,x,T,I,$,null),n.renderBufferDirect(T,null,I,$,A,null),A.onAfterShadow(n,A,x,T,I,$,null)}}let B=A.children;for(let I=0,W=B.length;I<W;I++)b(B[I],x,T,L,R,P)}function E(A){A.target.removeEventListener("dispose",E);for(let T in u){let L=u[T],R=A.target.uuid;R in L&&(L[R].dispose(),delete L[R])}}}function rA(n,t){function e(){let D=!1,K=new Re,q=null,ht=new Re(0,0,0,0);return{setMask:function(ot){q!==ot&&!D&&(n.colorMask(ot,ot,ot,ot),q=ot)},setLocked:function(ot){D=ot},setClear:function(ot,ct,Rt,Zt,st){st===!0&&(ot*=Zt,ct*=Zt,Rt*=Zt),K.set(ot,ct,Rt,Zt),ht.equals(K)===!1&&(n.clearColor(ot,ct,Rt,Zt),ht.copy(K))},reset:function(){D=!1,q=null,ht.set(-1,0,0,0)}}}function i(){let D=!1,K=!1,q=null,ht=null,ot=null;return{setReversed:function(ct){if(K!==ct){let Rt=t.get("EXT_clip_control");ct?Rt.clipControlEXT(Rt.LOWER_LEFT_EXT,Rt.ZERO_TO_ONE_EXT):Rt.clipControlEXT(Rt.LOWER_LEFT_EXT,Rt.NEGATIVE_ONE_TO_ONE_EXT),K=ct;let Zt=ot;ot=null,this.setClear(Zt)}},getReversed:function(){return K},setTest:function(ct){ct?_t(n.DEPTH_TEST):zt(n.DEPTH_TEST)},setMask:function(ct){q!==ct&&!D&&(n.depthMask(ct),q=ct)},setFunc:function(ct){if(K&&(ct=K0[ct]),ht!==ct){switch(ct){case Ac:n.depthFunc(n.NEVER);break;case Ec:n.depthFunc(n.ALWAYS);break;case Cc:n.depthFunc(n.LESS);break;case Xr:n.depthFunc(n.LEQUAL);break;case Rc:n.depthFunc(n.EQUAL);break;case Pc:n.depthFunc(n.GEQUAL);break;case Ic:n.depthFunc(n.GREATER);break;case Dc:n.depthFunc(n.NOTEQUAL);break;default:n.depthFunc(n.LEQUAL)}ht=ct}},setLocked:function(ct){D=ct},setClear:function(ct){ot!==ct&&(ot=ct,K&&(ct=1-ct),n.clearDepth(ct))},reset:function(){D=!1,q=null,ht=null,ot=null,K=!1}}}function s(){let D=!1,K=null,q=null,ht=null,ot=null,ct=null,Rt=null,Zt=null,st=null;return{setTest:function(Dt){D||(Dt?_t(n.STENCIL_TEST):zt(n.STENCIL_TEST))},setMask:function(Dt){K!==Dt&&!D&&(n.stencilMask(Dt),K=Dt)},setFunc:function(Dt,qt,yt){(q!==Dt||ht!==qt||ot!==yt)&&(n.stencilFunc(Dt,qt,yt),q=Dt,ht=qt,ot=yt)},setOp:function(Dt,qt,yt){(ct!==Dt||Rt!==qt||Zt!==yt)&&(n.stencilOp(Dt,qt,yt),ct=Dt,Rt=qt,Zt=yt)},setLocked:function(Dt){D=Dt},setClear:function(Dt){st!==Dt&&(n.clearStencil(Dt),st=Dt)},reset:function(){D=!1,K=null,q=null,ht=null,ot=null,ct=null,Rt=null,Zt=null,st=null}}}let r=new e,o=new i,a=new s,l={},u=new WeakMap,h={},d={},p={},f=new WeakMap,g=[],_=null,v=!1,m=null,y=null,M=null,b=null,E=null,A=null,x=null,T=new Xt(0,0,0),L=0,R=!1,P=null,O=null,B=null,I=null,W=null,$=n.getParameter(n.MAX_COMBINED_TEXTURE_IMAGE_UNITS),F=!1,Q=0,G=n.getParameter(n.VERSION);G.indexOf("WebGL")!==-1?(Q=parseFloat(/^WebGL (\d)/.exec(G)[1]),F=Q>=1):G.indexOf("OpenGL ES")!==-1&&(Q=parseFloat(/^OpenGL ES (\d)/.exec(G)[1]),F=Q>=2);let tt=null,et={},St=n.getParameter(n.SCISSOR_BOX),Ot=n.getParameter(n.VIEWPORT),Z=new Re().fromArray(St),gt=new Re().fromArray(Ot);function wt(D,K,q,ht){let ot=new Uint8Array(4),ct=n.createTexture();n.bindTexture(D,ct),n.texParameteri(D,n.TEXTURE_MIN_FILTER,n.NEAREST),n.texParameteri(D,n.TEXTURE_MAG_FILTER,n.NEAREST);for(let Rt=0;Rt<q;Rt++)D===n.TEXTURE_3D||D===n.TEXTURE_2D_ARRAY?n.texImage3D(K,0,n.RGBA,1,1,ht,0,n.RGBA,n.UNSIGNED_BYTE,ot):n.texImage2D(K+Rt,0,n.RGBA,1,1,0,n.RGBA,n.UNSIGNED_BYTE,ot);return ct}let It={};It[n.TEXTURE_2D]=wt(n.TEXTURE_2D,n.TEXTURE_2D,1),It[n.TEXTURE_CUBE_MAP]=wt(n.TEXTURE_CUBE_MAP,n.TEXTURE_CUBE_MAP_POSITIVE_X,6),It[n.TEXTURE_2D_ARRAY]=wt(n.TEXTURE_2D_ARRAY,n.TEXTURE_2D_ARRAY,1,1),It[n.TEXTURE_3D]=wt(n.TEXTURE_3D,n.TEXTURE_3D,1,1),r.setClear(0,0,0,1),o.setClear(1),a.setClear(0),_t(n.DEPTH_TEST),o.setFunc(Xr),Tn(!1),Pe(hf),_t(n.CULL_FACE),rn(Js);function _t(D){h[D]!==!0&&(n.enable(D),h[D]=!0)}function zt(D){h[D]!==!1&&(n.disable(D),h[D]=!1)}function Le(D,K){return p[D]!==K?(n.bindFramebuffer(D,K),p[D]=K,D===n.DRAW_FRAMEBUFFER&&(p[n.FRAMEBUFFER]=K),D===n.FRAMEBUFFER&&(p[n.DRAW_FRAMEBUFFER]=K),!0):!1}function Ut(D,K){let q=g,ht=!1;if(D){q=f.get(K),q===void 0&&(q=[],f.set(K,q));let ot=D.textures;if(q.length!==ot.length||q[0]!==n.COLOR_ATTACHMENT0){for(let ct=0,Rt=ot.length;ct<Rt;ct++)q[ct]=n.COLOR_ATTACHMENT0+ct;q.length=ot.length,ht=!0}}else q[0]!==n.BACK&&(q[0]=n.BACK,ht=!0);ht&&n.drawBuffers(q)}function ae(D){return _!==D?(n.useProgram(D),_=D,!0):!1}let he={[Ks]:n.FUNC_ADD,[y0]:n.FUNC_SUBTRACT,[x0]:n.FUNC_REVERSE_SUBTRACT};he[b0]=n.MIN,he[w0]=n.MAX;let Qt={[M0]:n.ZERO,[S0]:n.ONE,[T0]:n.SRC_COLOR,[pf]:n.SRC_ALPHA,[I0]:n.SRC_ALPHA_SATURATE,[R0]:n.DST_COLOR,[E0]:n.DST_ALPHA,[A0]:n.ONE_MINUS_SRC_COLOR,[mf]:n.ONE_MINUS_SRC_ALPHA,[P0]:n.ONE_MINUS_DST_COLOR,[C0]:n.ONE_MINUS_DST_ALPHA,[D0]:n.CONSTANT_COLOR,[L0]:n.ONE_MINUS_CONSTANT_COLOR,[N0]:n.CONSTANT_ALPHA,[U0]:n.ONE_MINUS_CONSTANT_ALPHA};function rn(D,K,q,ht,ot,ct,Rt,Zt,st,Dt){if(D===Js){v===!0&&(zt(n.BLEND),v=!1);return}if(v===!1&&(_t(n.BLEND),v=!0),D!==_0){if(D!==m||Dt!==R){if((y!==Ks||E!==Ks)&&(n.blendEquation(n.FUNC_ADD),y=Ks,E=Ks),Dt)switch(D){case oo:n.blendFuncSeparate(n.ONE,n.ONE_MINUS_SRC_ALPHA,n.ONE,n.ONE_MINUS_SRC_ALPHA);break;case Ms:n.blendFunc(n.ONE,n.ONE);break;case df:n.blendFuncSeparate(n.ZERO,n.ONE_MINUS_SRC_COLOR,n.ZERO,n.ONE);break;case ff:n.blendFuncSeparate(n.DST_COLOR,n.ONE_MINUS_SRC_ALPHA,n.ZERO,n.ONE);break;default:Bt("WebGLState: Invalid blending: ",D);break}else switch(D){case oo:n.blendFuncSeparate(n.SRC_ALPHA,n.ONE_MINUS_SRC_ALPHA,n.ONE,n.ONE_MINUS_SRC_ALPHA);break;case Ms:n.blendFuncSeparate(n.SRC_ALPHA,n.ONE,n.ONE,n.ONE);break;case df:Bt("WebGLState: SubtractiveBlending requires material.premultipliedAlpha = true");break;case ff:Bt("WebGLState: MultiplyBlending requires material.premultipliedAlpha = true");break;default:Bt("WebGLState: Invalid blending: ",D);break}M=null,b=null,A=null,x=null,T.set(0,0,0),L=0,m=D,R=Dt}return}ot=ot||K,ct=ct||q,Rt=Rt||ht,(K!==y||ot!==E)&&(n.blendEquationSeparate(he[K],he[ot]),y=K,E=ot),(q!==M||ht!==b||ct!==A||Rt!==x)&&(n.blendFuncSeparate(Qt[q],Qt[ht],Qt[ct],Qt[Rt]),M=q,b=ht,A=ct,x=Rt),(Zt.equals(T)===!1||st!==L)&&(n.blendColor(Zt.r,Zt.g,Zt.b,st),T.copy(Zt),L=st),m=D,R=!1}function Ve(D,K){D.side===pn?zt(n.CULL_FACE):_t(n.CULL_FACE);let q=D.side===wn;K&&(q=!q),Tn(q),D.blending===oo&&D.transparent===!1?rn(Js):rn(D.blending,D.blendEquation,D.blendSrc,D.blendDst,D.blendEquationAlpha,D.blendSrcAlpha,D.blendDstAlpha,D.blendColor,D.blendAlpha,D.premultipliedAlpha),o.setFunc(D.depthFunc),o.setTest(D.depthTest),o.setMask(D.depthWrite),r.setMask(D.colorWrite);let ht=D.stencilWrite;a.setTest(ht),ht&&(a.setMask(D.stencilWriteMask),a.setFunc(D.stencilFunc,D.stencilRef,D.stencilFuncMask),a.setOp(D.stencilFail,D.stencilZFail,D.stencilZPass)),Je(D.polygonOffset,D.polygonOffsetFactor,D.polygonOffsetUnits),D.alphaToCoverage===!0?_t(n.SAMPLE_ALPHA_TO_COVERAGE):zt(n.SAMPLE_ALPHA_TO_COVERAGE)}function Tn(D){P!==D&&(D?n.frontFace(n.CW):n.frontFace(n.CCW),P=D)}function Pe(D){D!==m0?(_t(n.CULL_FACE),D!==O&&(D===hf?n.cullFace(n.BACK):D===g0?n.cullFace(n.FRONT):n.cullFace(n.FRONT_AND_BACK))):zt(n.CULL_FACE),O=D}function pi(D){D!==B&&(F&&n.lineWidth(D),B=D)}function Je(D,K,q){D?(_t(n.POLYGON_OFFSET_FILL),(I!==K||W!==q)&&(I=K,W=q,o.getReversed()&&(K=-K,q=-q),n.polygonOffset(K,q))):zt(n.POLYGON_OFFSET_FILL)}function Hn(D){D?_t(n.SCISSOR_TEST):zt(n.SCISSOR_TEST)}function Wn(D){D===void 0&&(D=n.TEXTURE0+$-1),tt!==D&&(n.activeTexture(D),tt=D)}function $n(D,K,q){q===void 0&&(tt===null?q=n.TEXTURE0+$-1:q=tt);let ht=et[q];ht===void 0&&(ht={type:void 0,texture:void 0},et[q]=ht),(ht.type!==D||ht.texture!==K)&&(tt!==q&&(n.activeTexture(q),tt=q),n.bindTexture(D,K||It[D]),ht.type=D,ht.texture=K)}function k(){let D=et[tt];D!==void 0&&D.type!==void 0&&(n.bindTexture(D.type,null),D.type=void 0,D.texture=void 0)}function Xn(){try{n.compressedTexImage2D(...arguments)}catch(D){Bt("WebGLState:",D)}}function Te(){try{n.compressedTexImage3D(...arguments)}catch(D){Bt("WebGLState:",D)}}function Ae(){try{n.texSubImage2D(...arguments)}catch(D){Bt("WebGLState:",D)}}function vt(){try{n.texSubImage3D(...arguments)}catch(D){Bt("WebGLState:",D)}}function Ge(){try{n.compressedTexSubImage2D(...arguments)}catch(D){Bt("WebGLState:",D)}}function kt(){try{n.compressedTexSubImage3D(...arguments)}catch(D){Bt("WebGLState:",D)}}function Ht(){try{n.texStorage2D(...arguments)}catch(D){Bt("WebGLState:",D)}}function C(){try{n.texStorage3D(...arguments)}catch(D){Bt("WebGLState:",D)}}function w(){try{n.texImage2D(...arguments)}catch(D){Bt("WebGLState:",D)}}function V(){try{n.texImage3D(...arguments)}catch(D){Bt("WebGLState:",D)}}function it(D){return d[D]!==void 0?d[D]:n.getParameter(D)}function j(D,K){d[D]!==K&&(n.pixelStorei(D,K),d[D]=K)}function lt(D){Z.equals(D)===!1&&(n.scissor(D.x,D.y,D.z,D.w),Z.copy(D))}function pt(D){gt.equals(D)===!1&&(n.viewport(D.x,D.y,D.z,D.w),gt.copy(D))}function Y(D,K){let q=u.get(K);q===void 0&&(q=new WeakMap,u.set(K,q));let ht=q.get(D);ht===void 0&&(ht=n.getUniformBlockIndex(K,D.name),n.uniformBlockBinding(K,ht,ht),q.set(D,ht))}function J(D,K,q){let ot=u.get(K).get(D);l[ot]!==q&&(n.bindBufferBase(n.UNIFORM_BUFFER,ot,q),l[ot]=q)}function ut(){n.disable(n.BLEND),n.disable(n.CULL_FACE),n.disable(n.DEPTH_TEST),n.disable(n.POLYGON_OFFSET_FILL),n.disable(n.SCISSOR_TEST),n.disable(n.STENCIL_TEST),n.disable(n.SAMPLE_ALPHA_TO_COVERAGE),n.blendEquation(n.FUNC_ADD),n.blendFunc(n.ONE,n.ZERO),n.blendFuncSeparate(n.ONE,n.ZERO,n.ONE,n.ZERO),n.blendColor(0,0,0,0),n.colorMask(!0,!0,!0,!0),n.clearColor(0,0,0,0),n.depthMask(!0),n.depthFunc(n.LESS),o.setReversed(!1),n.clearDepth(1),n.stencilMask(4294967295),n.stencilFunc(n.ALWAYS,0,4294967295),n.stencilOp(n.KEEP,n.KEEP,n.KEEP),n.clearStencil(0),n.cullFace(n.BACK),n.frontFace(n.CCW),n.polygonOffset(0,0),n.activeTexture(n.TEXTURE0),n.bindFramebuffer(n.FRAMEBUFFER,null),n.bindFramebuffer(n.DRAW_FRAMEBUFFER,null),n.bindFramebuffer(n.READ_FRAMEBUFFER,null),n.useProgram(null),n.lineWidth(1),n.scissor(0,0,n.canvas.width,n.canvas.height),n.viewport(0,0,n.canvas.width,n.canvas.height),n.pixelStorei(n.PACK_ALIGNMENT,4),n.pixelStorei(n.UNPACK_ALIGNMENT,4),n.pixelStorei(n.UNPACK_FLIP_Y_WEBGL,!1),n.pixelStorei(n.UNPACK_PREMULTIPLY_ALPHA_WEBGL,!1),n.pixelStorei(n.UNPACK_COLORSPACE_CONVERSION_WEBGL,n.BROWSER_DEFAULT_WEBGL),n.pixelStorei(n.PACK_ROW_LENGTH,0),n.pixelStorei(n.PACK_SKIP_PIXELS,0),n.pixelStorei(n.PACK_SKIP_ROWS,0),n.pixelStorei(n.UNPACK_ROW_LENGTH,0),n.pixelStorei(n.UNPACK_IMAGE_HEIGHT,0),n.pixelStorei(n.UNPACK_SKIP_PIXELS,0),n.pixelStorei(n.UNPACK_SKIP_ROWS,0),n.pixelStorei(n.UNPACK_SKIP_IMAGES,0),h={},d={},tt=null,et={},p={},l={},f=new WeakMap,g=[],_=null,v=!1,m=null,y=null,M=null,b=null,E=null,A=null,x=null,T=new Xt(0,0,0),L=0,R=!1,P=null,O=null,B=null,I=null,W=null,Z.set(0,0,n.canvas.width,n.canvas.height),gt.set(0,0,n.canvas.width,n.canvas.height),r.reset(),o.reset(),a.reset()}return{buffers:{color:r,depth:o,stencil:a},enable:_t,disable:zt,bindFramebuffer:Le,drawBuffers:Ut,useProgram:ae,setBlending:rn,setMaterial:Ve,setFlipSided:Tn,setCullFace:Pe,setLineWidth:pi,setPolygonOffset:Je,setScissorTest:Hn,activeTexture:Wn,bindTexture:$n,unbindTexture:k,compressedTexImage2D:Xn,compressedTexImage3D:Te,texImage2D:w,texImage3D:V,pixelStorei:j,getParameter:it,updateUBOMapping:Y,uniformBlockBinding:J,texStorage2D:Ht,texStorage3D:C,texSubImage2D:Ae,texSubImage3D:vt,compressedTexSubImage2D:Ge,compressedTexSubImage3D:kt,scissor:lt,viewport:pt,reset:ut}}function oA(n,t,e,i,s,r,o){let a=t.has("WEBGL_multisampled_render_to_texture")?t.get("WEBGL_multisampled_render_to_texture"):null,l=typeof navigator>"u"?!1:/OculusBrowser/g.test(navigator.userAgent),u=new at,h=new WeakMap,d=new Set,p,f=new WeakMap,g=new Set,_=new FinalizationRegistry(C=>g.delete(C)),v=!1;try{v=typeof OffscreenCanvas<"u"&&new OffscreenCanvas(1,1).getContext("2d")!==null}catch{}function m(C,w){return v?new OffscreenCanvas(C,w):da("canvas")}function y(C,w,V){let it=1,j=Ht(C);if((j.width>V||j.height>V)&&(it=V/Math.max(j.width,j.height)),it<1)if(typeof HTMLImageElement<"u"&&C instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&C instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&C instanceof ImageBitmap||typeof VideoFrame<"u"&&C instanceof VideoFrame){let lt=Math.floor(it*j.width),pt=Math.floor(it*j.height);p===void 0&&(p=m(lt,pt));let Y=w?m(lt,pt):p;return Y.width=lt,Y.height=pt,Y.getContext("2d").drawImage(C,0,0,lt,pt),Nt("WebGLRenderer: Texture has been resized from ("+j.width+"x"+j.height+") to ("+lt+"x"+pt+")."),Y}else return"data"in C&&Nt("WebGLRenderer: Image in DataTexture is too big ("+j.width+"x"+j.height+")."),C;return C}function M(C){return C.generateMipmaps}function b(C){n.generateMipmap(C)}function E(C){return C.isWebGLCubeRenderTarget?n.TEXTURE_CUBE_MAP:C.isWebGL3DRenderTarget?n.TEXTURE_3D:C.isWebGLArrayRenderTarget||C.isCompressedArrayTexture?n.TEXTURE_2D_ARRAY:n.TEXTURE_2D}function A(C,w,V,it,j,lt=!1){if(C!==null){if(n[C]!==void 0)return n[C];Nt("WebGLRenderer: Attempt to use non-existing WebGL internal format '"+C+"'")}let pt;it&&(pt=t.get("EXT_texture_norm16"),pt||Nt("WebGLRenderer: Unable to use normalized textures without EXT_texture_norm16 extension"));let Y=w;if(w===n.RED&&(V===n.FLOAT&&(Y=n.R32F),V===n.HALF_FLOAT&&(Y=n.R16F),V===n.UNSIGNED_BYTE&&(Y=n.R8),V===n.UNSIGNED_SHORT&&pt&&(Y=pt.R16_EXT),V===n.SHORT&&pt&&(Y=pt.R16_SNORM_EXT)),w===n.RED_INTEGER&&(V===n.UNSIGNED_BYTE&&(Y=n.R8UI),V===n.UNSIGNED_SHORT&&(Y=n.R16UI),V===n.UNSIGNED_INT&&(Y=n.R32UI),V===n.BYTE&&(Y=n.R8I),V===n.SHORT&&(Y=n.R16I),V===n.INT&&(Y=n.R32I)),w===n.RG&&(V===n.FLOAT&&(Y=n.RG32F),V===n.HALF_FLOAT&&(Y=n.RG16F),V===n.UNSIGNED_BYTE&&(Y=n.RG8),V===n.UNSIGNED_SHORT&&pt&&(Y=pt.RG16_EXT),V===n.SHORT&&pt&&(Y=pt.RG16_SNORM_EXT)),w===n.RG_INTEGER&&(V===n.UNSIGNED_BYTE&&(Y=n.RG8UI),V===n.UNSIGNED_SHORT&&(Y=n.RG16UI),V===n.UNSIGNED_INT&&(Y=n.RG32UI),V===n.BYTE&&(Y=n.RG8I),V===n.SHORT&&(Y=n.RG16I),V===n.INT&&(Y=n.RG32I)),w===n.RGB_INTEGER&&(V===n.UNSIGNED_BYTE&&(Y=n.RGB8UI),V===n.UNSIGNED_SHORT&&(Y=n.RGB16UI),V===n.UNSIGNED_INT&&(Y=n.RGB32UI),V===n.BYTE&&(Y=n.RGB8I),V===n.SHORT&&(Y=n.RGB16I),V===n.INT&&(Y=n.RGB32I)),w===n.RGBA_INTEGER&&(V===n.UNSIGNED_BYTE&&(Y=n.RGBA8UI),V===n.UNSIGNED_SHORT&&(Y=n.RGBA16UI),V===n.UNSIGNED_INT&&(Y=n.RGBA32UI),V===n.BYTE&&(Y=n.RGBA8I),V===n.SHORT&&(Y=n.RGBA16I),V===n.INT&&(Y=n.RGBA32I)),w===n.RGB&&(V===n.UNSIGNED_SHORT&&pt&&(Y=pt.RGB16_EXT),V===n.SHORT&&pt&&(Y=pt.RGB16_SNORM_EXT),V===n.UNSIGNED_INT_5_9_9_9_REV&&(Y=n.RGB9_E5),V===n.UNSIGNED_INT_10F_11F_11F_REV&&(Y=n.R11F_G11F_B10F)),w===n.RGBA){let J=lt?ha:ne.getTransfer(j);V===n.FLOAT&&(Y=n.RGBA32F),V===n.HALF_FLOAT&&(Y=n.RGBA16F),V===n.UNSIGNED_BYTE&&(Y=J===de?n.SRGB8_ALPHA8:n.RGBA8),V===n.UNSIGNED_SHORT&&pt&&(Y=pt.RGBA16_EXT),V===n.SHORT&&pt&&(Y=pt.RGBA16_SNORM_EXT),V===n.UNSIGNED_SHORT_4_4_4_4&&(Y=n.RGBA4),V===n.UNSIGNED_SHORT_5_5_5_1&&(Y=n.RGB5_A1)}return(Y===n.R16F||Y===n.R32F||Y===n.RG16F||Y===n.RG32F||Y===n.RGBA16F||Y===n.RGBA32F)&&t.get("EXT_color_buffer_float"),Y}function x(C,w){let V;return C?w===null||w===hi||w===Qs?V=n.DEPTH24_STENCIL8:w===jn?V=n.DEPTH32F_STENCIL8:w===lo&&(V=n.DEPTH24_STENCIL8,Nt("DepthTexture: 16 bit depth attachment is not supported with stencil. Using 24-bit attachment.")):w===null||w===hi||w===Qs?V=n.DEPTH_COMPONENT24:w===jn?V=n.DEPTH_COMPONENT32F:w===lo&&(V=n.DEPTH_COMPONENT16),V}function T(C,w){return M(C)===!0||C.isFramebufferTexture&&C.minFilter!==tn&&C.minFilter!==bn?Math.log2(Math.max(w.width,w.height))+1:C.mipmaps.length>0?C.mipmaps.length:C.isCompressedTexture&&Array.isArray(C.image)?w.mipmaps.length:1}function L(C){let w=new WeakRef(C);i.get(C).__ref=w,g.add(w),_.register(C,w,w)}function R(C){let w=i.get(C).__ref;w!==void 0&&(g.delete(w),_.unregister(w))}function P(C){B(C.target)}function O(C){I(C.target)}function B(C){C.removeEventListener("dispose",P),R(C),$(C),C.isVideoTexture&&h.delete(C),C.isHTMLTexture&&d.delete(C)}function I(C){C.removeEventListener("dispose",O),R(C),Q(C)}function W(){for(let C of g){let w=C.deref();w!==void 0&&(w.isRenderTarget===!0?I(w):B(w))}g.clear(),d.clear()}function $(C){let w=i.get(C);if(w.__webglInit===void 0)return;let V=C.source,it=f.get(V);if(it){let j=it[w.__cacheKey];j.usedTimes--,j.usedTimes===0&&F(C),Object.keys(it).length===0&&f.delete(V)}i.remove(C)}function F(C){let w=i.get(C);n.deleteTexture(w.__webglTexture);let V=C.source,it=f.get(V);delete it[w.__cacheKey],o.memory.textures--}function Q(C){let w=i.get(C);w.__depthDisposeCallback&&w.__depthDisposeCallback();let V=C.depthTexture;if(V&&V.renderTarget===C&&B(V),C.isWebGLCubeRenderTarget)for(let j=0;j<6;j++){if(Array.isArray(w.__webglFramebuffer[j]))for(let lt=0;lt<w.__webglFramebuffer[j].length;lt++)n.deleteFramebuffer(w.__webglFramebuffer[j][lt]);else n.deleteFramebuffer(w.__webglFramebuffer[j]);w.__webglDepthbuffer&&n.deleteRenderbuffer(w.__webglDepthbuffer[j])}else{if(Array.isArray(w.__webglFramebuffer))for(let j=0;j<w.__webglFramebuffer.length;j++)n.deleteFramebuffer(w.__webglFramebuffer[j]);else n.deleteFramebuffer(w.__webglFramebuffer);if(w.__webglDepthbuffer&&n.deleteRenderbuffer(w.__webglDepthbuffer),w.__webglMultisampledFramebuffer&&n.deleteFramebuffer(w.__webglMultisampledFramebuffer),w.__webglColorRenderbuffer)for(let j=0;j<w.__webglColorRenderbuffer.length;j++)w.__webglColorRenderbuffer[j]&&n.deleteRenderbuffer(w.__webglColorRenderbuffer[j]);w.__webglDepthRenderbuffer&&n.deleteRenderbuffer(w.__webglDepthRenderbuffer)}let it=C.textures;for(let j=0,lt=it.length;j<lt;j++){let pt=i.get(it[j]);pt.__webglTexture&&(n.deleteTexture(pt.__webglTexture),o.memory.textures--),i.remove(it[j])}i.remove(C)}let G=0;function tt(){G=0}function et(){return G}function St(C){G=C}function Ot(){let C=G;return C>=s.maxTextures&&Nt("WebGLTextures: Trying to use "+(C+1)+" texture units while this GPU supports only "+s.maxTextures),G+=1,C}function Z(C){let w=[];return w.push(C.wrapS),w.push(C.wrapT),w.push(C.wrapR||0),w.push(C.magFilter),w.push(C.minFilter),w.push(C.anisotropy),w.push(C.internalFormat),w.push(C.format),w.push(C.type),w.push(C.generateMipmaps),w.push(C.mipmapsAutoUpdate),w.push(C.premultiplyAlpha),w.push(C.flipY),w.push(C.unpackAlignment),w.push(C.colorSpace),w.join()}function gt(C,w){let V=i.get(C);if(C.isVideoTexture&&Ge(C),C.isRenderTargetTexture===!1&&C.isExternalTexture!==!0&&C.version>0&&V.__version!==C.version){let it=C.image;if(it===null)Nt("WebGLRenderer: Texture marked for update but no image data found.");else if(it.complete===!1)Nt("WebGLRenderer: Texture marked for update but image is incomplete");else{Ve(V,C,w);return}}else C.isExternalTexture&&(V.__webglTexture=C.sourceTexture?C.sourceTexture:null);e.bindTexture(n.TEXTURE_2D,V.__webglTexture,n.TEXTURE0+w)}function wt(C,w){let V=i.get(C);if(C.isRenderTargetTexture===!1&&C.version>0&&V.__version!==C.version){Ve(V,C,w);return}else C.isExternalTexture&&(V.__webglTexture=C.sourceTexture?C.sourceTexture:null);e.bindTexture(n.TEXTURE_2D_ARRAY,V.__webglTexture,n.TEXTURE0+w)}function It(C,w){let V=i.get(C);if(C.isRenderTargetTexture===!1&&C.version>0&&V.__version!==C.version){Ve(V,C,w);return}e.bindTexture(n.TEXTURE_3D,V.__webglTexture,n.TEXTURE0+w)}function _t(C,w){let V=i.get(C);if(C.version>0&&V.__version!==C.version){Tn(V,C,w);return}e.bindTexture(n.TEXTURE_CUBE_MAP,V.__webglTexture,n.TEXTURE0+w)}let zt={[Lc]:n.REPEAT,[gi]:n.CLAMP_TO_EDGE,[Nc]:n.MIRRORED_REPEAT},Le={[tn]:n.NEAREST,[F0]:n.NEAREST_MIPMAP_NEAREST,[Ha]:n.NEAREST_MIPMAP_LINEAR,[bn]:n.LINEAR,[fu]:n.LINEAR_MIPMAP_NEAREST,[Yi]:n.LINEAR_MIPMAP_LINEAR},Ut={[G0]:n.NEVER,[Df]:n.ALWAYS,[H0]:n.LESS,[Pf]:n.LEQUAL,[W0]:n.EQUAL,[If]:n.GEQUAL,[$0]:n.GREATER,[X0]:n.NOTEQUAL};function ae(C,w){if(w.type===jn&&t.has("OES_texture_float_linear")===!1&&(w.magFilter===bn||w.magFilter===fu||w.magFilter===Ha||w.magFilter===Yi||w.minFilter===bn||w.minFilter===fu||w.minFilter===Ha||w.minFilter===Yi)&&Nt("WebGLRenderer: Unable to use linear filtering with floating point textures. OES_texture_float_linear not supported on this device."),n.texParameteri(C,n.TEXTURE_WRAP_S,zt[w.wrapS]),n.texParameteri(C,n.TEXTURE_WRAP_T,zt[w.wrapT]),(C===n.TEXTURE_3D||C===n.TEXTURE_2D_ARRAY)&&n.texParameteri(C,n.TEXTURE_WRAP_R,zt[w.wrapR]),n.texParameteri(C,n.TEXTURE_MAG_FILTER,Le[w.magFilter]),n.texParameteri(C,n.TEXTURE_MIN_FILTER,Le[w.minFilter]),w.compareFunction&&(n.texParameteri(C,n.TEXTURE_COMPARE_MODE,n.COMPARE_REF_TO_TEXTURE),n.texParameteri(C,n.TEXTURE_COMPARE_FUNC,Ut[w.compareFunction])),t.has("EXT_texture_filter_anisotropic")===!0){if(w.magFilter===tn||w.minFilter!==Ha&&w.minFilter!==Yi||w.type===jn&&t.has("OES_texture_float_linear")===!1)return;if(w.anisotropy>1||i.get(w).__currentAnisotropy){let V=t.get("EXT_texture_filter_anisotropic");n.texParameterf(C,V.TEXTURE_MAX_ANISOTROPY_EXT,Math.min(w.anisotropy,s.getMaxAnisotropy())),i.get(w).__currentAnisotropy=w.anisotropy}}}function he(C,w){let V=!1;C.__webglInit===void 0&&(C.__webglInit=!0,w.addEventListener("dispose",P),L(w));let it=w.source,j=f.get(it);j===void 0&&(j={},f.set(it,j));let lt=Z(w);if(lt!==C.__cacheKey){j[lt]===void 0&&(j[lt]={texture:n.createTexture(),usedTimes:0},o.memory.textures++,V=!0),j[lt].usedTimes++;let pt=j[C.__cacheKey];pt!==void 0&&(j[C.__cacheKey].usedTimes--,pt.usedTimes===0&&F(w)),C.__cacheKey=lt,C.__webglTexture=j[lt].texture}return V}function Qt(C,w,V){return Math.floor(Math.floor(C/V)/w)}function rn(C,w,V,it){let lt=C.updateRanges;if(lt.length===0)e.texSubImage2D(n.TEXTURE_2D,0,0,0,w.width,w.height,V,it,w.data);else{lt.sort((D,K)=>D.start-K.start);let pt=0;for(let D=1;D<lt.length;D++){let K=lt[pt],q=lt[D],ht=K.start+K.count,ot=Qt(q.start,w.width,4),ct=Qt(K.start,w.width,4);q.start<=ht+1&&ot===ct&&Qt(q.start+q.count-1,w.width,4)===ot?K.count=Math.max(K.count,q.start+q.count-K.start):(++pt,lt[pt]=q)}lt.length=pt+1;let Y=e.getParameter(n.UNPACK_ROW_LENGTH),J=e.getParameter(n.UNPACK_SKIP_PIXELS),ut=e.getParameter(n.UNPACK_SKIP_ROWS);e.pixelStorei(n.UNPACK_ROW_LENGTH,w.width);for(let D=0,K=lt.length;D<K;D++){let q=lt[D],ht=Math.floor(q.start/4),ot=Math.ceil(q.count/4),ct=ht%w.width,Rt=Math.floor(ht/w.width),Zt=ot,st=1;e.pixelStorei(n.UNPACK_SKIP_PIXELS,ct),e.pixelStorei(n.UNPACK_SKIP_ROWS,Rt),e.texSubImage2D(n.TEXTURE_2D,0,ct,Rt,Zt,st,V,it,w.data)}C.clearUpdateRanges(),e.pixelStorei(n.UNPACK_ROW_LENGTH,Y),e.pixelStorei(n.UNPACK_SKIP_PIXELS,J),e.pixelStorei(n.UNPACK_SKIP_ROWS,ut)}}function Ve(C,w,V){let it=n.TEXTURE_2D;(w.isDataArrayTexture||w.isCompressedArrayTexture)&&(it=n.TEXTURE_2D_ARRAY),w.isData3DTexture&&(it=n.TEXTURE_3D);let j=he(C,w),lt=w.source;e.bindTexture(it,C.__webglTexture,n.TEXTURE0+V);let pt=i.get(lt);if(lt.version!==pt.__version||j===!0){if(e.activeTexture(n.TEXTURE0+V),(typeof ImageBitmap<"u"&&w.image instanceof ImageBitmap)===!1){let st=ne.getPrimaries(ne.workingColorSpace),Dt=w.colorSpace===Ji?null:ne.getPrimaries(w.colorSpace),qt=w.colorSpace===Ji||st===Dt?n.NONE:n.BROWSER_DEFAULT_WEBGL;e.pixelStorei(n.UNPACK_FLIP_Y_WEBGL,w.flipY),e.pixelStorei(n.UNPACK_PREMULTIPLY_ALPHA_WEBGL,w.premultiplyAlpha),e.pixelStorei(n.UNPACK_COLORSPACE_CONVERSION_WEBGL,qt)}e.pixelStorei(n.UNPACK_ALIGNMENT,w.unpackAlignment);let J=y(w.image,!1,s.maxTextureSize);J=kt(w,J);let ut=r.convert(w.format,w.colorSpace),D=r.convert(w.type),K=A(w.internalFormat,ut,D,w.normalized,w.colorSpace,w.isVideoTexture);ae(it,w);let q,ht=w.mipmaps,ot=w.isVideoTexture!==!0,ct=pt.__version===void 0||j===!0,Rt=lt.dataReady,Zt=T(w,J);if(w.isDepthTexture)K=x(w.format===Zi,w.type),ct&&(ot?e.texStorage2D(n.TEXTURE_2D,1,K,J.width,J.height):e.texImage2D(n.TEXTURE_2D,0,K,J.width,J.height,0,ut,D,null));else if(w.isDataTexture)if(ht.length>0){ot&&ct&&e.texStorage2D(n.TEXTURE_2D,Zt,K,ht[0].width,ht[0].height);for(let st=0,Dt=ht.length;st<Dt;st++)q=ht[st],ot?Rt&&e.texSubImage2D(n.TEXTURE_2D,st,0,0,q.width,q.height,ut,D,q.data):e.texImage2D(n.TEXTURE_2D,st,K,q.width,q.height,0,ut,D,q.data);w.generateMipmaps=!1}else ot?(ct&&e.texStorage2D(n.TEXTURE_2D,Zt,K,J.width,J.height),Rt&&rn(w,J,ut,D)):e.texImage2D(n.TEXTURE_2D,0,K,J.width,J.height,0,ut,D,J.data);else if(w.isCompressedTexture)if(w.isCompressedArrayTexture){ot&&ct&&e.texStorage3D(n.TEXTURE_2D_ARRAY,Zt,K,ht[0].width,ht[0].height,J.depth);for(let st=0,Dt=ht.length;st<Dt;st++)if(q=ht[st],w.format!==fi)if(ut!==null)if(ot){if(Rt)if(w.layerUpdates.size>0){let qt=Gf(q.width,q.height,w.format,w.type);for(let yt of w.layerUpdates){let fe=q.data.subarray(yt*qt/q.data.BYTES_PER_ELEMENT,(yt+1)*qt/q.data.BYTES_PER_ELEMENT);e.compressedTexSubImage3D(n.TEXTURE_2D_ARRAY,st,0,0,yt,q.width,q.height,1,ut,fe)}}else e.compressedTexSubImage3D(n.TEXTURE_2D_ARRAY,st,0,0,0,q.width,q.height,J.depth,ut,q.data)}else e.compressedTexImage3D(n.TEXTURE_2D_ARRAY,st,K,q.width,q.height,J.depth,0,q.data,0,0);else Nt("WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()");else ot?Rt&&e.texSubImage3D(n.TEXTURE_2D_ARRAY,st,0,0,0,q.width,q.height,J.depth,ut,D,q.data):e.texImage3D(n.TEXTURE_2D_ARRAY,st,K,q.width,q.height,J.depth,0,ut,D,q.data);w.layerUpdates.size>0&&w.clearLayerUpdates()}else{ot&&ct&&e.texStorage2D(n.TEXTURE_2D,Zt,K,ht[0].width,ht[0].height);for(let st=0,Dt=ht.length;st<Dt;st++)q=ht[st],w.format!==fi?ut!==null?ot?Rt&&e.compressedTexSubImage2D(n.TEXTURE_2D,st,0,0,q.width,q.height,ut,q.data):e.compressedTexImage2D(n.TEXTURE_2D,st,K,q.width,q.height,0,q.data):Nt("WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()"):ot?Rt&&e.texSubImage2D(n.TEXTURE_2D,st,0,0,q.width,q.height,ut,D,q.data):e.texImage2D(n.TEXTURE_2D,st,K,q.width,q.height,0,ut,D,q.data)}else if(w.isDataArrayTexture)if(ot){if(ct&&e.texStorage3D(n.TEXTURE_2D_ARRAY,Zt,K,J.width,J.height,J.depth),Rt)if(w.layerUpdates.size>0){let st=Gf(J.width,J.height,w.format,w.type);for(let Dt of w.layerUpdates){let qt=J.data.subarray(Dt*st/J.data.BYTES_PER_ELEMENT,(Dt+1)*st/J.data.BYTES_PER_ELEMENT);e.texSubImage3D(n.TEXTURE_2D_ARRAY,0,0,0,Dt,J.width,J.height,1,ut,D,qt)}w.clearLayerUpdates()}else e.texSubImage3D(n.TEXTURE_2D_ARRAY,0,0,0,0,J.width,J.height,J.depth,ut,D,J.data)}else e.texImage3D(n.TEXTURE_2D_ARRAY,0,K,J.width,J.height,J.depth,0,ut,D,J.data);else if(w.isData3DTexture)ot?(ct&&e.texStorage3D(n.TEXTURE_3D,Zt,K,J.width,J.height,J.depth),Rt&&e.texSubImage3D(n.TEXTURE_3D,0,0,0,0,J.width,J.height,J.depth,ut,D,J.data)):e.texImage3D(n.TEXTURE_3D,0,K,J.width,J.height,J.depth,0,ut,D,J.data);else if(w.isFramebufferTexture){if(ct)if(ot)e.texStorage2D(n.TEXTURE_2D,Zt,K,J.width,J.height);else{let st=J.width,Dt=J.height;for(let qt=0;qt<Zt;qt++)e.texImage2D(n.TEXTURE_2D,qt,K,st,Dt,0,ut,D,null),st>>=1,Dt>>=1}}else if(w.isHTMLTexture){if("texElementImage2D"in n){let st=n.canvas;if(st.hasAttribute("layoutsubtree")||st.setAttribute("layoutsubtree","true"),J.parentNode!==st){st.appendChild(J),d.add(w),st.onpaint=Dt=>{let qt=Dt.changedElements;for(let yt of d)qt.includes(yt.image)&&(yt.needsUpdate=!0)},st.requestPaint();return}if(n.texElementImage2D.length===3)n.texElementImage2D(n.TEXTURE_2D,n.RGBA8,J);else{let qt=n.RGBA,yt=n.RGBA,fe=n.UNSIGNED_BYTE;n.texElementImage2D(n.TEXTURE_2D,0,qt,yt,fe,J)}n.texParameteri(n.TEXTURE_2D,n.TEXTURE_MIN_FILTER,n.LINEAR),n.texParameteri(n.TEXTURE_2D,n.TEXTURE_WRAP_S,n.CLAMP_TO_EDGE),n.texParameteri(n.TEXTURE_2D,n.TEXTURE_WRAP_T,n.CLAMP_TO_EDGE)}}else if(ht.length>0){if(ot&&ct){let st=Ht(ht[0]);e.texStorage2D(n.TEXTURE_2D,Zt,K,st.width,st.height)}for(let st=0,Dt=ht.length;st<Dt;st++)q=ht[st],ot?Rt&&e.texSubImage2D(n.TEXTURE_2D,st,0,0,ut,D,q):e.texImage2D(n.TEXTURE_2D,st,K,ut,D,q);w.generateMipmaps=!1}else if(ot){if(ct){let st=Ht(J);e.texStorage2D(n.TEXTURE_2D,Zt,K,st.width,st.height)}Rt&&e.texSubImage2D(n.TEXTURE_2D,0,0,0,ut,D,J)}else e.texImage2D(n.TEXTURE_2D,0,K,ut,D,J);M(w)&&w.mipmapsAutoUpdate===!0&&b(it),pt.__version=lt.version,w.onUpdate&&w.onUpdate(w)}C.__version=w.version}function Tn(C,w,V){if(w.image.length!==6)return;let it=he(C,w),j=w.source;e.bindTexture(n.TEXTURE_CUBE_MAP,C.__webglTexture,n.TEXTURE0+V);let lt=i.get(j);if(j.version!==lt.__version||it===!0){e.activeTexture(n.TEXTURE0+V);let pt=ne.getPrimaries(ne.workingColorSpace),Y=w.colorSpace===Ji?null:ne.getPrimaries(w.colorSpace),J=w.colorSpace===Ji||pt===Y?n.NONE:n.BROWSER_DEFAULT_WEBGL;e.pixelStorei(n.UNPACK_FLIP_Y_WEBGL,w.flipY),e.pixelStorei(n.UNPACK_PREMULTIPLY_ALPHA_WEBGL,w.premultiplyAlpha),e.pixelStorei(n.UNPACK_ALIGNMENT,w.unpackAlignment),e.pixelStorei(n.UNPACK_COLORSPACE_CONVERSION_WEBGL,J);let ut=w.isCompressedTexture||w.image[0].isCompressedTexture,D=w.image[0]&&w.image[0].isDataTexture,K=[];for(let yt=0;yt<6;yt++)!ut&&!D?K[yt]=y(w.image[yt],!0,s.maxCubemapSize):K[yt]=D?w.image[yt].image:w.image[yt],K[yt]=kt(w,K[yt]);let q=K[0],ht=r.convert(w.format,w.colorSpace),ot=r.convert(w.type),ct=A(w.internalFormat,ht,ot,w.normalized,w.colorSpace),Rt=w.isVideoTexture!==!0,Zt=lt.__version===void 0||it===!0,st=j.dataReady,Dt=T(w,q);ae(n.TEXTURE_CUBE_MAP,w);let qt;if(w.isDepthTexture){if(ct=x(w.format===Zi,w.type),Zt)if(Rt)e.texStorage2D(n.TEXTURE_CUBE_MAP,1,ct,q.width,q.height);else for(let yt=0;yt<6;yt++)e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+yt,0,ct,q.width,q.height,0,ht,ot,null)}else if(ut){Rt&&Zt&&e.texStorage2D(n.TEXTURE_CUBE_MAP,Dt,ct,q.width,q.height);for(let yt=0;yt<6;yt++){qt=K[yt].mipmaps;for(let fe=0;fe<qt.length;fe++){let Ke=qt[fe];w.format!==fi?ht!==null?Rt?st&&e.compressedTexSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+yt,fe,0,0,Ke.width,Ke.height,ht,Ke.data):e.compressedTexImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+yt,fe,ct,Ke.width,Ke.height,0,Ke.data):Nt("WebGLRenderer: Attempt to load unsupported compressed texture format in .setTextureCube()"):Rt?st&&e.texSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+yt,fe,0,0,Ke.width,Ke.height,ht,ot,Ke.data):e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+yt,fe,ct,Ke.width,Ke.height,0,ht,ot,Ke.data)}}}else{if(qt=w.mipmaps,Rt&&Zt){qt.length>0&&Dt++;let yt=Ht(K[0]);e.texStorage2D(n.TEXTURE_CUBE_MAP,Dt,ct,yt.width,yt.height)}for(let yt=0;yt<6;yt++)if(D){Rt?st&&e.texSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+yt,0,0,0,K[yt].width,K[yt].height,ht,ot,K[yt].data):e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+yt,0,ct,K[yt].width,K[yt].height,0,ht,ot,K[yt].data);for(let fe=0;fe<qt.length;fe++){let Qi=qt[fe].image[yt].image;Rt?st&&e.texSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+yt,fe+1,0,0,Qi.width,Qi.height,ht,ot,Qi.data):e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+yt,fe+1,ct,Qi.width,Qi.height,0,ht,ot,Qi.data)}}else{Rt?st&&e.texSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+yt,0,0,0,ht,ot,K[yt]):e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+yt,0,ct,ht,ot,K[yt]);for(let fe=0;fe<qt.length;fe++){let Ke=qt[fe];Rt?st&&e.texSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+yt,fe+1,0,0,ht,ot,Ke.image[yt]):e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+yt,fe+1,ct,ht,ot,Ke.image[yt])}}}M(w)&&w.mipmapsAutoUpdate===!0&&b(n.TEXTURE_CUBE_MAP),lt.__version=j.version,w.onUpdate&&w.onUpdate(w)}C.__version=w.version}function Pe(C,w,V,it,j,lt){let pt=r.convert(V.format,V.colorSpace),Y=r.convert(V.type),J=A(V.internalFormat,pt,Y,V.normalized,V.colorSpace),ut=i.get(w),D=i.get(V);if(D.__renderTarget=w,!ut.__hasExternalTextures){let K=Math.max(1,w.width>>lt),q=Math.max(1,w.height>>lt);j===n.TEXTURE_3D||j===n.TEXTURE_2D_ARRAY?e.texImage3D(j,lt,J,K,q,w.depth,0,pt,Y,null):e.texImage2D(j,lt,J,K,q,0,pt,Y,null)}e.bindFramebuffer(n.FRAMEBUFFER,C),vt(w)?a.framebufferTexture2DMultisampleEXT(n.FRAMEBUFFER,it,j,D.__webglTexture,0,Ae(w)):(j===n.TEXTURE_2D||j>=n.TEXTURE_CUBE_MAP_POSITIVE_X&&j<=n.TEXTURE_CUBE_MAP_NEGATIVE_Z)&&n.framebufferTexture2D(n.FRAMEBUFFER,it,j,D.__webglTexture,lt),e.bindFramebuffer(n.FRAMEBUFFER,null)}function pi(C,w,V){if(n.bindRenderbuffer(n.RENDERBUFFER,C),w.depthBuffer){let it=w.depthTexture,j=it&&it.isDepthTexture?it.type:null,lt=x(w.stencilBuffer,j),pt=w.stencilBuffer?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT;vt(w)?a.renderbufferStorageMultisampleEXT(n.RENDERBUFFER,Ae(w),lt,w.width,w.height):V?n.renderbufferStorageMultisample(n.RENDERBUFFER,Ae(w),lt,w.width,w.height):n.renderbufferStorage(n.RENDERBUFFER,lt,w.width,w.height),n.framebufferRenderbuffer(n.FRAMEBUFFER,pt,n.RENDERBUFFER,C)}else{let it=w.textures;for(let j=0;j<it.length;j++){let lt=it[j],pt=r.convert(lt.format,lt.colorSpace),Y=r.convert(lt.type),J=A(lt.internalFormat,pt,Y,lt.normalized,lt.colorSpace);vt(w)?a.renderbufferStorageMultisampleEXT(n.RENDERBUFFER,Ae(w),J,w.width,w.height):V?n.renderbufferStorageMultisample(n.RENDERBUFFER,Ae(w),J,w.width,w.height):n.renderbufferStorage(n.RENDERBUFFER,J,w.width,w.height)}}n.bindRenderbuffer(n.RENDERBUFFER,null)}function Je(C,w,V){let it=w.isWebGLCubeRenderTarget===!0;if(e.bindFramebuffer(n.FRAMEBUFFER,C),!(w.depthTexture&&w.depthTexture.isDepthTexture))throw new Error("THREE.WebGLTextures: renderTarget.depthTexture must be an instance of THREE.DepthTexture.");let j=i.get(w.depthTexture);j.__renderTarget=w;let lt=it?w.depthTexture.image[0]:w.depthTexture.image;(!j.__webglTexture||lt.width!==w.width||lt.height!==w.height)&&(lt.width=w.width,lt.height=w.height,w.depthTexture.needsUpdate=!0),it?_t(w.depthTexture,0):gt(w.depthTexture,0);let pt=j.__webglTexture,Y=Ae(w),J=it?n.TEXTURE_CUBE_MAP_POSITIVE_X+V:n.TEXTURE_2D,ut=w.depthTexture.format===Zi?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT;if(w.depthTexture.format===Wi)vt(w)?a.framebufferTexture2DMultisampleEXT(n.FRAMEBUFFER,ut,J,pt,0,Y):n.framebufferTexture2D(n.FRAMEBUFFER,ut,J,pt,0);else if(w.depthTexture.format===Zi)vt(w)?a.framebufferTexture2DMultisampleEXT(n.FRAMEBUFFER,ut,J,pt,0,Y):n.framebufferTexture2D(n.FRAMEBUFFER,ut,J,pt,0);else throw new Error("THREE.WebGLTextures: Unknown depthTexture format.")}function Hn(C){let w=i.get(C),V=C.isWebGLCubeRenderTarget===!0;if(w.__boundDepthTexture!==C.depthTexture){let it=C.depthTexture;if(w.__depthDisposeCallback&&w.__depthDisposeCallback(),it){let j=()=>{delete w.__boundDepthTexture,delete w.__depthDisposeCallback,it.removeEventListener("dispose",j)};it.addEventListener("dispose",j),w.__depthDisposeCallback=j}w.__boundDepthTexture=it}if(C.depthTexture&&!w.__autoAllocateDepthBuffer)if(V)for(let it=0;it<6;it++)Je(w.__webglFramebuffer[it],C,it);else C.texture.mipmaps.length>0?Je(w.__webglFramebuffer[0],C,0):Je(w.__webglFramebuffer,C,0);else if(V){w.__webglDepthbuffer=[];for(let it=0;it<6;it++)if(e.bindFramebuffer(n.FRAMEBUFFER,w.__webglFramebuffer[it]),w.__webglDepthbuffer[it]===void 0)w.__webglDepthbuffer[it]=n.createRenderbuffer(),pi(w.__webglDepthbuffer[it],C,!1);else{let j=C.stencilBuffer?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT,lt=w.__webglDepthbuffer[it];n.bindRenderbuffer(n.RENDERBUFFER,lt),n.framebufferRenderbuffer(n.FRAMEBUFFER,j,n.RENDERBUFFER,lt)}}else if(C.texture.mipmaps.length>0?e.bindFramebuffer(n.FRAMEBUFFER,w.__webglFramebuffer[0]):e.bindFramebuffer(n.FRAMEBUFFER,w.__webglFramebuffer),w.__webglDepthbuffer===void 0)w.__webglDepthbuffer=n.createRenderbuffer(),pi(w.__webglDepthbuffer,C,!1);else{let j=C.stencilBuffer?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT,lt=w.__webglDepthbuffer;n.bindRenderbuffer(n.RENDERBUFFER,lt),n.framebufferRenderbuffer(n.FRAMEBUFFER,j,n.RENDERBUFFER,lt)}e.bindFramebuffer(n.FRAMEBUFFER,null)}function Wn(C,w,V){let it=i.get(C);w!==void 0&&Pe(it.__webglFramebuffer,C,C.texture,n.COLOR_ATTACHMENT0,n.TEXTURE_2D,0),V!==void 0&&Hn(C)}function $n(C){let w=C.texture,V=i.get(C),it=i.get(w);C.addEventListener("dispose",O),L(C);let j=C.textures,lt=C.isWebGLCubeRenderTarget===!0,pt=j.length>1;if(pt||(it.__webglTexture===void 0&&(it.__webglTexture=n.createTexture()),it.__version=w.version,o.memory.textures++),lt){V.__webglFramebuffer=[];for(let Y=0;Y<6;Y++)if(w.mipmaps.length>0){V.__webglFramebuffer[Y]=[];for(let J=0;J<w.mipmaps.length;J++)V.__webglFramebuffer[Y][J]=n.createFramebuffer()}else V.__webglFramebuffer[Y]=n.createFramebuffer()}else{if(w.mipmaps.length>0){V.__webglFramebuffer=[];for(let Y=0;Y<w.mipmaps.length;Y++)V.__webglFramebuffer[Y]=n.createFramebuffer()}else V.__webglFramebuffer=n.createFramebuffer();if(pt)for(let Y=0,J=j.length;Y<J;Y++){let ut=i.get(j[Y]);ut.__webglTexture===void 0&&(ut.__webglTexture=n.createTexture(),o.memory.textures++)}if(C.samples>0&&vt(C)===!1){V.__webglMultisampledFramebuffer=n.createFramebuffer(),V.__webglColorRenderbuffer=[],e.bindFramebuffer(n.FRAMEBUFFER,V.__webglMultisampledFramebuffer);for(let Y=0;Y<j.length;Y++){let J=j[Y];V.__webglColorRenderbuffer[Y]=n.createRenderbuffer(),n.bindRenderbuffer(n.RENDERBUFFER,V.__webglColorRenderbuffer[Y]);let ut=r.convert(J.format,J.colorSpace),D=r.convert(J.type),K=A(J.internalFormat,ut,D,J.normalized,J.colorSpace,C.isXRRenderTarget===!0),q=Ae(C);n.renderbufferStorageMultisample(n.RENDERBUFFER,q,K,C.width,C.height),n.framebufferRenderbuffer(n.FRAMEBUFFER,n.COLOR_ATTACHMENT0+Y,n.RENDERBUFFER,V.__webglColorRenderbuffer[Y])}n.bindRenderbuffer(n.RENDERBUFFER,null),C.depthBuffer&&(V.__webglDepthRenderbuffer=n.createRenderbuffer(),pi(V.__webglDepthRenderbuffer,C,!0)),e.bindFramebuffer(n.FRAMEBUFFER,null)}}if(lt){e.bindTexture(n.TEXTURE_CUBE_MAP,it.__webglTexture),ae(n.TEXTURE_CUBE_MAP,w);for(let Y=0;Y<6;Y++)if(w.mipmaps.length>0)for(let J=0;J<w.mipmaps.length;J++)Pe(V.__webglFramebuffer[Y][J],C,w,n.COLOR_ATTACHMENT0,n.TEXTURE_CUBE_MAP_POSITIVE_X+Y,J);else Pe(V.__webglFramebuffer[Y],C,w,n.COLOR_ATTACHMENT0,n.TEXTURE_CUBE_MAP_POSITIVE_X+Y,0);M(w)?b(n.TEXTURE_CUBE_MAP):w.mipmaps.length>0&&n.texParameteri(n.TEXTURE_CUBE_MAP,n.TEXTURE_MAX_LEVEL,w.mipmaps.length-1),e.unbindTexture()}else if(pt){for(let Y=0,J=j.length;Y<J;Y++){let ut=j[Y],D=i.get(ut),K=n.TEXTURE_2D;(C.isWebGL3DRenderTarget||C.isWebGLArrayRenderTarget)&&(K=C.isWebGL3DRenderTarget?n.TEXTURE_3D:n.TEXTURE_2D_ARRAY),e.bindTexture(K,D.__webglTexture),ae(K,ut),Pe(V.__webglFramebuffer,C,ut,n.COLOR_ATTACHMENT0+Y,K,0),M(ut)&&b(K)}e.unbindTexture()}else{let Y=n.TEXTURE_2D;if((C.isWebGL3DRenderTarget||C.isWebGLArrayRenderTarget)&&(Y=C.isWebGL3DRenderTarget?n.TEXTURE_3D:n.TEXTURE_2D_ARRAY),e.bindTexture(Y,it.__webglTexture),ae(Y,w),w.mipmaps.length>0)for(let J=0;J<w.mipmaps.length;J++)Pe(V.__webglFramebuffer[J],C,w,n.COLOR_ATTACHMENT0,Y,J);else Pe(V.__webglFramebuffer,C,w,n.COLOR_ATTACHMENT0,Y,0);M(w)?b(Y):w.mipmaps.length>0&&n.texParameteri(Y,n.TEXTURE_MAX_LEVEL,w.mipmaps.length-1),e.unbindTexture()}C.depthBuffer&&Hn(C)}function k(C){let w=C.textures;for(let V=0,it=w.length;V<it;V++){let j=w[V];if(M(j)&&j.mipmapsAutoUpdate===!0){let lt=E(C),pt=i.get(j).__webglTexture;e.bindTexture(lt,pt),b(lt),e.unbindTexture()}}}let Xn=[];function Te(C){if(C.samples>0){if(vt(C)===!1){let w=C.textures,V=C.width,it=C.height,j=n.COLOR_BUFFER_BIT,lt=C.stencilBuffer?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT,pt=i.get(C),Y=w.length>1;if(Y)for(let ut=0;ut<w.length;ut++)e.bindFramebuffer(n.FRAMEBUFFER,pt.__webglMultisampledFramebuffer),n.framebufferRenderbuffer(n.FRAMEBUFFER,n.COLOR_ATTACHMENT0+ut,n.RENDERBUFFER,null),e.bindFramebuffer(n.FRAMEBUFFER,pt.__webglFramebuffer),n.framebufferTexture2D(n.DRAW_FRAMEBUFFER,n.COLOR_ATTACHMENT0+ut,n.TEXTURE_2D,null,0);e.bindFramebuffer(n.READ_FRAMEBUFFER,pt.__webglMultisampledFramebuffer),C.texture.mipmaps.length>0?e.bindFramebuffer(n.DRAW_FRAMEBUFFER,pt.__webglFramebuffer[0]):e.bindFramebuffer(n.DRAW_FRAMEBUFFER,pt.__webglFramebuffer);for(let ut=0;ut<w.length;ut++){if(C.resolveDepthBuffer&&(C.depthBuffer&&(j|=n.DEPTH_BUFFER_BIT),C.stencilBuffer&&C.resolveStencilBuffer&&(j|=n.STENCIL_BUFFER_BIT)),Y){n.framebufferRenderbuffer(n.READ_FRAMEBUFFER,n.COLOR_ATTACHMENT0,n.RENDERBUFFER,pt.__webglColorRenderbuffer[ut]);let D=i.get(w[ut]).__webglTexture;n.framebufferTexture2D(n.DRAW_FRAMEBUFFER,n.COLOR_ATTACHMENT0,n.TEXTURE_2D,D,0)}n.blitFramebuffer(0,0,V,it,0,0,V,it,j,n.NEAREST),l===!0&&(Xn.length=0,Xn.push(n.COLOR_ATTACHMENT0+ut),C.depthBuffer&&C.storeMultisampledDepthBuffer===!1&&Xn.push(lt),n.invalidateFramebuffer(n.READ_FRAMEBUFFER,Xn))}if(e.bindFramebuffer(n.READ_FRAMEBUFFER,null),e.bindFramebuffer(n.DRAW_FRAMEBUFFER,null),Y)for(let ut=0;ut<w.length;ut++){e.bindFramebuffer(n.FRAMEBUFFER,pt.__webglMultisampledFramebuffer),n.framebufferRenderbuffer(n.FRAMEBUFFER,n.COLOR_ATTACHMENT0+ut,n.RENDERBUFFER,pt.__webglColorRenderbuffer[ut]);let D=i.get(w[ut]).__webglTexture;e.bindFramebuffer(n.FRAMEBUFFER,pt.__webglFramebuffer),n.framebufferTexture2D(n.DRAW_FRAMEBUFFER,n.COLOR_ATTACHMENT0+ut,n.TEXTURE_2D,D,0)}e.bindFramebuffer(n.DRAW_FRAMEBUFFER,pt.__webglMultisampledFramebuffer)}else if(C.depthBuffer&&C.storeMultisampledDepthBuffer===!1&&l){let w=C.stencilBuffer?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT;n.invalidateFramebuffer(n.DRAW_FRAMEBUFFER,[w])}}}function Ae(C){return Math.min(s.maxSamples,C.samples)}function vt(C){let w=i.get(C);return C.samples>0&&t.has("WEBGL_multisampled_render_to_texture")===!0&&w.__useRenderToTexture!==!1}function Ge(C){let w=o.render.frame;h.get(C)!==w&&(h.set(C,w),C.update())}function kt(C,w){let V=C.colorSpace,it=C.format,j=C.type;return C.isCompressedTexture===!0||C.isVideoTexture===!0||V!==ua&&V!==Ji&&(ne.getTransfer(V)===de?(it!==fi||j!==Rn)&&Nt("WebGLTextures: sRGB encoded textures have to use RGBAFormat and UnsignedByteType."):Bt("WebGLTextures: Unsupported texture color space:",V)),w}function Ht(C){return typeof HTMLImageElement<"u"&&C instanceof HTMLImageElement?(u.width=C.naturalWidth||C.width,u.height=C.naturalHeight||C.height):typeof VideoFrame<"u"&&C instanceof VideoFrame?(u.width=C.displayWidth,u.height=C.displayHeight):(u.width=C.width,u.height=C.height),u}this.allocateTextureUnit=Ot,this.resetTextureUnits=tt,this.getTextureUnits=et,this.setTextureUnits=St,this.setTexture2D=gt,this.setTexture2DArray=wt,this.setTexture3D=It,this.setTextureCube=_t,this.rebindTextures=Wn,this.setupRenderTarget=$n,this.updateRenderTargetMipmap=k,this.updateMultisampleRenderTarget=Te,this.setupDepthRenderbuffer=Hn,this.setupFrameBufferTexture=Pe,this.useMultisampledRTT=vt,this.dispose=W}function aA(n,t){function e(i,s=Ji){let r,o=ne.getTransfer(s);if(i===Rn)return n.UNSIGNED_BYTE;if(i===mu)return n.UNSIGNED_SHORT_4_4_4_4;if(i===gu)return n.UNSIGNED_SHORT_5_5_5_1;if(i===Af)return n.UNSIGNED_INT_5_9_9_9_REV;if(i===Ef)return n.UNSIGNED_INT_10F_11F_11F_REV;if(i===Sf)return n.BYTE;if(i===Tf)return n.SHORT;if(i===lo)return n.UNSIGNED_SHORT;if(i===pu)return n.INT;if(i===hi)return n.UNSIGNED_INT;if(i===jn)return n.FLOAT;if(i===di)return n.HALF_FLOAT;if(i===Cf)return n.ALPHA;if(i===Rf)return n.RGB;if(i===fi)return n.RGBA;if(i===Wi)return n.DEPTH_COMPONENT;if(i===Zi)return n.DEPTH_STENCIL;if(i===vu)return n.RED;if(i===_u)return n.RED_INTEGER;if(i===Ss)return n.RG;if(i===yu)return n.RG_INTEGER;if(i===xu)return n.RGBA_INTEGER;if(i===Wa||i===$a||i===Xa||i===qa)if(o===de)if(r=t.get("WEBGL_compressed_texture_s3tc_srgb"),r!==null){if(i===Wa)return r.COMPRESSED_SRGB_S3TC_DXT1_EXT;if(i===$a)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT1_EXT;if(i===Xa)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT3_EXT;if(i===qa)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT5_EXT}else return null;else if(r=t.get("WEBGL_compressed_texture_s3tc"),r!==null){if(i===Wa)return r.COMPRESSED_RGB_S3TC_DXT1_EXT;if(i===$a)return r.COMPRESSED_RGBA_S3TC_DXT1_EXT;if(i===Xa)return r.COMPRESSED_RGBA_S3TC_DXT3_EXT;if(i===qa)return r.COMPRESSED_RGBA_S3TC_DXT5_EXT}else return null;if(i===bu||i===wu||i===Mu||i===Su)if(r=t.get("WEBGL_compressed_texture_pvrtc"),r!==null){if(i===bu)return r.COMPRESSED_RGB_PVRTC_4BPPV1_IMG;if(i===wu)return r.COMPRESSED_RGB_PVRTC_2BPPV1_IMG;if(i===Mu)return r.COMPRESSED_RGBA_PVRTC_4BPPV1_IMG;if(i===Su)return r.COMPRESSED_RGBA_PVRTC_2BPPV1_IMG}else return null;if(i===Tu||i===Au||i===Eu||i===Cu||i===Ru||i===Ya||i===Pu)if(r=t.get("WEBGL_compressed_texture_etc"),r!==null){if(i===Tu||i===Au)return o===de?r.COMPRESSED_SRGB8_ETC2:r.COMPRESSED_RGB8_ETC2;if(i===Eu)return o===de?r.COMPRESSED_SRGB8_ALPHA8_ETC2_EAC:r.COMPRESSED_RGBA8_ETC2_EAC;if(i===Cu)return r.COMPRESSED_R11_EAC;if(i===Ru)return r.COMPRESSED_SIGNED_R11_EAC;if(i===Ya)return r.COMPRESSED_RG11_EAC;if(i===Pu)return r.COMPRESSED_SIGNED_RG11_EAC}else return null;if(i===Iu||i===Du||i===Lu||i===Nu||i===Uu||i===Ou||i===ku||i===Fu||i===Bu||i===zu||i===Vu||i===Gu||i===Hu||i===Wu)if(r=t.get("WEBGL_compressed_texture_astc"),r!==null){if(i===Iu)return o===de?r.COMPRESSED_SRGB8_ALPHA8_ASTC_4x4_KHR:r.COMPRESSED_RGBA_ASTC_4x4_KHR;if(i===Du)return o===de?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x4_KHR:r.COMPRESSED_RGBA_ASTC_5x4_KHR;if(i===Lu)return o===de?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x5_KHR:r.COMPRESSED_RGBA_ASTC_5x5_KHR;if(i===Nu)return o===de?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x5_KHR:r.COMPRESSED_RGBA_ASTC_6x5_KHR;if(i===Uu)return o===de?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x6_KHR:r.COMPRESSED_RGBA_ASTC_6x6_KHR;if(i===Ou)return o===de?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x5_KHR:r.COMPRESSED_RGBA_ASTC_8x5_KHR;if(i===ku)return o===de?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x6_KHR:r.COMPRESSED_RGBA_ASTC_8x6_KHR;if(i===Fu)return o===de?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x8_KHR:r.COMPRESSED_RGBA_ASTC_8x8_KHR;if(i===Bu)return o===de?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x5_KHR:r.COMPRESSED_RGBA_ASTC_10x5_KHR;if(i===zu)return o===de?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x6_KHR:r.COMPRESSED_RGBA_ASTC_10x6_KHR;if(i===Vu)return o===de?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x8_KHR:r.COMPRESSED_RGBA_ASTC_10x8_KHR;if(i===Gu)return o===de?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x10_KHR:r.COMPRESSED_RGBA_ASTC_10x10_KHR;if(i===Hu)return o===de?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x10_KHR:r.COMPRESSED_RGBA_ASTC_12x10_KHR;if(i===Wu)return o===de?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x12_KHR:r.COMPRESSED_RGBA_ASTC_12x12_KHR}else return null;if(i===$u||i===Xu||i===qu)if(r=t.get("EXT_texture_compression_bptc"),r!==null){if(i===$u)return o===de?r.COMPRESSED_SRGB_ALPHA_BPTC_UNORM_EXT:r.COMPRESSED_RGBA_BPTC_UNORM_EXT;if(i===Xu)return r.COMPRESSED_RGB_BPTC_SIGNED_FLOAT_EXT;if(i===qu)return r.COMPRESSED_RGB_BPTC_UNSIGNED_FLOAT_EXT}else return null;if(i===Yu||i===Zu||i===Za||i===Ju)if(r=t.get("EXT_texture_compression_rgtc"),r!==null){if(i===Yu)return r.COMPRESSED_RED_RGTC1_EXT;if(i===Zu)return r.COMPRESSED_SIGNED_RED_RGTC1_EXT;if(i===Za)return r.COMPRESSED_RED_GREEN_RGTC2_EXT;if(i===Ju)return r.COMPRESSED_SIGNED_RED_GREEN_RGTC2_EXT}else return null;return i===Qs?n.UNSIGNED_INT_24_8:n[i]!==void 0?n[i]:null}return{convert:e}}var lA=`
void main() {

	gl_Position = vec4( position, 1.0 );

}`,cA=`
uniform sampler2DArray depthColor;
uniform float depthWidth;
uniform float depthHeight;

void main() {

	vec2 coord = vec2( gl_FragCoord.x / depthWidth, gl_FragCoord.y / depthHeight );

	if ( coord.x >= 1.0 ) {

		gl_FragDepth = texture( depthColor, vec3( coord.x - 1.0, coord.y, 1 ) ).r;

	} else {

		gl_FragDepth = texture( depthColor, vec3( coord.x, coord.y, 0 ) ).r;

	}

}`,Kf=class{constructor(){this.texture=null,this.mesh=null,this.depthNear=0,this.depthFar=0}init(t,e){if(this.texture===null){let i=new Ma(t.texture);(t.depthNear!==e.depthNear||t.depthFar!==e.depthFar)&&(this.depthNear=t.depthNear,this.depthFar=t.depthFar),this.texture=i}}getMesh(t){if(this.texture!==null&&this.mesh===null){let e=t.cameras[0].viewport,i=new Vn({vertexShader:lA,fragmentShader:cA,uniforms:{depthColor:{value:this.texture},depthWidth:{value:e.z},depthHeight:{value:e.w}}});this.mesh=new Oe(new La(20,20),i)}return this.mesh}reset(){this.texture=null,this.mesh=null}getDepthTexture(){return this.texture}},jf=class extends ui{constructor(t,e){super();let i=this,s=null,r=1,o=null,a="local-floor",l=1,u=null,h=null,d=null,p=null,f=null,g=null,_=typeof XRWebGLBinding<"u",v=new Kf,m={},y=e.getContextAttributes(),M=null,b=null,E=[],A=[],x=new at,T=null,L=null,R=new xn;R.viewport=new Re;let P=new xn;P.viewport=new Re;let O=[R,P],B=new cu,I=null,W=null;this.cameraAutoUpdate=!0,this.enabled=!1,this.isPresenting=!1,this.getController=function(Z){let gt=E[Z];return gt===void 0&&(gt=new Kr,E[Z]=gt),gt.getTargetRaySpace()},this.getControllerGrip=function(Z){let gt=E[Z];return gt===void 0&&(gt=new Kr,E[Z]=gt),gt.getGripSpace()},this.getHand=function(Z){let gt=E[Z];return gt===void 0&&(gt=new Kr,E[Z]=gt),gt.getHandSpace()};function $(Z){let gt=A.indexOf(Z.inputSource);if(gt===-1)return;let wt=E[gt];wt!==void 0&&(wt.update(Z.inputSource,Z.frame,u||o),wt.dispatchEvent({type:Z.type,data:Z.inputSource}))}function F(){s.removeEventListener("select",$),s.removeEventListener("selectstart",$),s.removeEventListener("selectend",$),s.removeEventListener("squeeze",$),s.removeEventListener("squeezestart",$),s.removeEventListener("squeezeend",$),s.removeEventListener("end",F),s.removeEventListener("inputsourceschange",Q);for(let Z=0;Z<E.length;Z++){let gt=A[Z];gt!==null&&(A[Z]=null,E[Z].disconnect(gt))}I=null,W=null,v.reset();for(let Z in m)delete m[Z];if(t.setRenderTarget(M),f=null,p=null,d=null,s=null,b=null,Ot.stop(),i.isPresenting=!1,t.setPixelRatio(T),t.setSize(x.width,x.height,!1),L!==null){let Z=L.camera;Z.fov=L.fov,Z.zoom=L.zoom,Z.updateProjectionMatrix(),L=null}i.dispatchEvent({type:"sessionend"})}this.setFramebufferScaleFactor=function(Z){r=Z,i.isPresenting===!0&&Nt("WebXRManager: Cannot change framebuffer scale while presenting.")},this.setReferenceSpaceType=function(Z){a=Z,i.isPresenting===!0&&Nt("WebXRManager: Cannot change reference space type while presenting.")},this.getReferenceSpace=function(){return u||o},this.setReferenceSpace=function(Z){u=Z},this.getBaseLayer=function(){return p!==null?p:f},this.getBinding=function(){return d===null&&_&&(d=new XRWebGLBinding(s,e)),d},this.getFrame=function(){return g},this.getSession=function(){return s},this.setSession=async function(Z){if(s=Z,s!==null){if(M=t.getRenderTarget(),s.addEventListener("select",$),s.addEventListener("selectstart",$),s.addEventListener("selectend",$),s.addEventListener("squeeze",$),s.addEventListener("squeezestart",$),s.addEventListener("squeezeend",$),s.addEventListener("end",F),s.addEventListener("inputsourceschange",Q),y.xrCompatible!==!0&&await e.makeXRCompatible(),T=t.getPixelRatio(),t.getSize(x),_&&"createProjectionLayer"in XRWebGLBinding.prototype){let wt=null,It=null,_t=null;y.depth&&(_t=y.stencil?e.DEPTH24_STENCIL8:e.DEPTH_COMPONENT24,wt=y.stencil?Zi:Wi,It=y.stencil?Qs:hi);let zt={colorFormat:e.RGBA8,depthFormat:_t,scaleFactor:r};d=this.getBinding(),p=d.createProjectionLayer(zt),s.updateRenderState({layers:[p]}),t.setPixelRatio(1),t.setSize(p.textureWidth,p.textureHeight,!1),b=new Bn(p.textureWidth,p.textureHeight,{format:fi,type:Rn,depthTexture:new Xi(p.textureWidth,p.textureHeight,It,void 0,void 0,void 0,void 0,void 0,void 0,wt),stencilBuffer:y.stencil,colorSpace:t.outputColorSpace,samples:y.antialias?4:0,resolveDepthBuffer:p.ignoreDepthValues===!1,resolveStencilBuffer:p.ignoreDepthValues===!1,storeMultisampledDepthBuffer:p.ignoreDepthValues===!1,storeMultisampledStencilBuffer:p.ignoreDepthValues===!1})}else{let wt={antialias:y.antialias,alpha:!0,depth:y.depth,stencil:y.stencil,framebufferScaleFactor:r};f=new XRWebGLLayer(s,e,wt),s.updateRenderState({baseLayer:f}),t.setPixelRatio(1),t.setSize(f.framebufferWidth,f.framebufferHeight,!1),b=new Bn(f.framebufferWidth,f.framebufferHeight,{format:fi,type:Rn,colorSpace:t.outputColorSpace,stencilBuffer:y.stencil,resolveDepthBuffer:f.ignoreDepthValues===!1,resolveStencilBuffer:f.ignoreDepthValues===!1,storeMultisampledDepthBuffer:f.ignoreDepthValues===!1,storeMultisampledStencilBuffer:f.ignoreDepthValues===!1})}b.isXRRenderTarget=!0,this.setFoveation(l),u=null,o=await s.requestReferenceSpace(a),Ot.setContext(s),Ot.start(),i.isPresenting=!0,i.dispatchEvent({type:"sessionstart"})}},this.getEnvironmentBlendMode=function(){if(s!==null)return s.environmentBlendMode},this.getDepthTexture=function(){return v.getDepthTexture()};function Q(Z){for(let gt=0;gt<Z.removed.length;gt++){let wt=Z.removed[gt],It=A.indexOf(wt);It>=0&&(A[It]=null,E[It].disconnect(wt))}for(let gt=0;gt<Z.added.length;gt++){let wt=Z.added[gt],It=A.indexOf(wt);if(It===-1){for(let zt=0;zt<E.length;zt++)if(zt>=A.length){A.push(wt),It=zt;break}else if(A[zt]===null){A[zt]=wt,It=zt;break}if(It===-1)break}let _t=E[It];_t&&_t.connect(wt)}}function G(Z,gt){gt===null?Z.matrixWorld.copy(Z.matrix):Z.matrixWorld.multiplyMatrices(gt.matrixWorld,Z.matrix),Z.matrixWorldInverse.copy(Z.matrixWorld).invert()}this.updateCamera=function(Z){if(s===null)return;let gt=Z.near,wt=Z.far;v.texture!==null&&(v.depthNear>0&&(gt=v.depthNear),v.depthFar>0&&(wt=v.depthFar)),B.near=P.near=R.near=gt,B.far=P.far=R.far=wt,(I!==B.near||W!==B.far)&&(s.updateRenderState({depthNear:B.near,depthFar:B.far}),I=B.near,W=B.far),B.layers.mask=Z.layers.mask|6,R.layers.mask=B.layers.mask&-5,P.layers.mask=B.layers.mask&-3;let It=Z.parent,_t=B.cameras;G(B,It);for(let zt=0;zt<_t.length;zt++)G(_t[zt],It);B.projectionMatrix.copy(R.projectionMatrix),B.projectionMatrixInverse.copy(R.projectionMatrixInverse),L===null&&Z.isPerspectiveCamera&&(L={camera:Z,fov:Z.fov,zoom:Z.zoom}),tt(Z,B,It)};function tt(Z,gt,wt){wt===null?Z.matrix.copy(gt.matrixWorld):(Z.matrix.copy(wt.matrixWorld),Z.matrix.invert(),Z.matrix.multiply(gt.matrixWorld)),Z.matrix.decompose(Z.position,Z.quaternion,Z.scale),Z.updateMatrixWorld(!0),Z.projectionMatrix.copy(gt.projectionMatrix),Z.projectionMatrixInverse.copy(gt.projectionMatrixInverse),Z.isPerspectiveCamera&&(Z.fov=Zr*2*Math.atan(1/Z.projectionMatrix.elements[5]),Z.zoom=1)}this.getCamera=function(){return B},this.getFoveation=function(){if(!(p===null&&f===null))return l},this.setFoveation=function(Z){l=Z,p!==null&&(p.fixedFoveation=Z),f!==null&&f.fixedFoveation!==void 0&&(f.fixedFoveation=Z)},this.hasDepthSensing=function(){return v.texture!==null},this.getDepthSensingMesh=function(){return v.getMesh(B)},this.getCameraTexture=function(Z){return m[Z]};let et=null;function St(Z,gt){if(h=gt.getViewerPose(u||o),g=gt,h!==null){let wt=h.views;f!==null&&(t.setRenderTargetFramebuffer(b,f.framebuffer),t.setRenderTarget(b));let It=!1;wt.length!==B.cameras.length&&(B.cameras.length=0,It=!0);for(let Ut=0;Ut<wt.length;Ut++){let ae=wt[Ut],he=null;if(f!==null)he=f.getViewport(ae);else{let rn=d.getViewSubImage(p,ae);he=rn.viewport,Ut===0&&(t.setRenderTargetTextures(b,rn.colorTexture,rn.depthStencilTexture),t.setRenderTarget(b))}let Qt=O[Ut];Qt===void 0&&(Qt=new xn,Qt.layers.enable(Ut),Qt.viewport=new Re,O[Ut]=Qt),Qt.matrix.fromArray(ae.transform.matrix),Qt.matrix.decompose(Qt.position,Qt.quaternion,Qt.scale),Qt.projectionMatrix.fromArray(ae.projectionMatrix),Qt.projectionMatrixInverse.copy(Qt.projectionMatrix).invert(),Qt.viewport.set(he.x,he.y,he.width,he.height),Ut===0&&(B.matrix.copy(Qt.matrix),B.matrix.decompose(B.position,B.quaternion,B.scale)),It===!0&&B.cameras.push(Qt)}let _t=s.enabledFeatures;if(_t&&_t.includes("depth-sensing")&&s.depthUsage=="gpu-optimized"&&_){d=i.getBinding();let Ut=d.getDepthInformation(wt[0]);Ut&&Ut.isValid&&Ut.texture&&v.init(Ut,s.renderState)}if(_t&&_t.includes("camera-access")&&_){t.state.unbindTexture(),d=i.getBinding();for(let Ut=0;Ut<wt.length;Ut++){let ae=wt[Ut].camera;if(ae){let he=m[ae];he||(he=new Ma,m[ae]=he);let Qt=d.getCameraImage(ae);he.sourceTexture=Qt}}}}for(let wt=0;wt<E.length;wt++){let It=A[wt],_t=E[wt];It!==null&&_t!==void 0&&_t.update(It,gt,u||o)}et&&et(Z,gt),gt.detectedPlanes&&i.dispatchEvent({type:"planesdetected",data:gt}),g=null}let Ot=new Rv;Ot.setAnimationLoop(St),this.setAnimationLoop=function(Z){et=Z},this.dispose=function(){}}},uA=new oe,Bv=new Gt;Bv.set(-1,0,0,0,1,0,0,0,1);function hA(n,t){function e(v,m){v.matrixAutoUpdate===!0&&v.updateMatrix(),m.value.copy(v.matrix)}function i(v,m){m.color.getRGB(v.fogColor.value,Bf(n)),m.isFog?(v.fogNear.value=m.near,v.fogFar.value=m.far):m.isFogExp2&&(v.fogDensity.value=m.density)}function s(v,m,y,M,b){m.isNodeMaterial?m.uniformsNeedUpdate=!1:m.isMeshBasicMaterial?r(v,m):m.isMeshLambertMaterial?(r(v,m),m.envMap&&(v.envMapIntensity.value=m.envMapIntensity)):m.isMeshToonMaterial?(r(v,m),d(v,m)):m.isMeshPhongMaterial?(r(v,m),h(v,m),m.envMap&&(v.envMapIntensity.value=m.envMapIntensity)):m.isMeshStandardMaterial?(r(v,m),p(v,m),m.isMeshPhysicalMaterial&&f(v,m,b)):m.isMeshMatcapMaterial?(r(v,m),g(v,m)):m.isMeshDepthMaterial?r(v,m):m.isMeshDistanceMaterial?(r(v,m),_(v,m)):m.isMeshNormalMaterial?r(v,m):m.isLineBasicMaterial?(o(v,m),m.isLineDashedMaterial&&a(v,m)):m.isPointsMaterial?l(v,m,y,M):m.isSpriteMaterial?u(v,m):m.isShadowMaterial?(v.color.value.copy(m.color),v.opacity.value=m.opacity):m.isShaderMaterial&&(m.uniformsNeedUpdate=!1)}function r(v,m){v.opacity.value=m.opacity,m.color&&v.diffuse.value.copy(m.color),m.emissive&&v.emissive.value.copy(m.emissive).multiplyScalar(m.emissiveIntensity),m.map&&(v.map.value=m.map,e(m.map,v.mapTransform)),m.alphaMap&&(v.alphaMap.value=m.alphaMap,e(m.alphaMap,v.alphaMapTransform)),m.bumpMap&&(v.bumpMap.value=m.bumpMap,e(m.bumpMap,v.bumpMapTransform),v.bumpScale.value=m.bumpScale,m.side===wn&&(v.bumpScale.value*=-1)),m.normalMap&&(v.normalMap.value=m.normalMap,e(m.normalMap,v.normalMapTransform),v.normalScale.value.copy(m.normalScale),m.side===wn&&v.normalScale.value.negate()),m.displacementMap&&(v.displacementMap.value=m.displacementMap,e(m.displacementMap,v.displacementMapTransform),v.displacementScale.value=m.displacementScale,v.displacementBias.value=m.displacementBias),m.emissiveMap&&(v.emissiveMap.value=m.emissiveMap,e(m.emissiveMap,v.emissiveMapTransform)),m.specularMap&&(v.specularMap.value=m.specularMap,e(m.specularMap,v.specularMapTransform)),m.alphaTest>0&&(v.alphaTest.value=m.alphaTest);let y=t.get(m),M=y.envMap,b=y.envMapRotation;M&&(v.envMap.value=M,v.envMapRotation.value.setFromMatrix4(uA.makeRotationFromEuler(b)).transpose(),M.isCubeTexture&&M.isRenderTargetTexture===!1&&v.envMapRotation.value.premultiply(Bv),v.reflectivity.value=m.reflectivity,v.ior.value=m.ior,v.refractionRatio.value=m.refractionRatio),m.lightMap&&(v.lightMap.value=m.lightMap,v.lightMapIntensity.value=m.lightMapIntensity,e(m.lightMap,v.lightMapTransform)),m.aoMap&&(v.aoMap.value=m.aoMap,v.aoMapIntensity.value=m.aoMapIntensity,e(m.aoMap,v.aoMapTransform))}function o(v,m){v.diffuse.value.copy(m.color),v.opacity.value=m.opacity,m.map&&(v.map.value=m.map,e(m.map,v.mapTransform))}function a(v,m){v.dashSize.value=m.dashSize,v.totalSize.value=m.dashSize+m.gapSize,v.scale.value=m.scale}function l(v,m,y,M){v.diffuse.value.copy(m.color),v.opacity.value=m.opacity,v.size.value=m.size*y,v.scale.value=M*.5,m.map&&(v.map.value=m.map,e(m.map,v.uvTransform)),m.alphaMap&&(v.alphaMap.value=m.alphaMap,e(m.alphaMap,v.alphaMapTransform)),m.alphaTest>0&&(v.alphaTest.value=m.alphaTest)}function u(v,m){v.diffuse.value.copy(m.color),v.opacity.value=m.opacity,v.rotation.value=m.rotation,m.map&&(v.map.value=m.map,e(m.map,v.mapTransform)),m.alphaMap&&(v.alphaMap.value=m.alphaMap,e(m.alphaMap,v.alphaMapTransform)),m.alphaTest>0&&(v.alphaTest.value=m.alphaTest)}function h(v,m){v.specular.value.copy(m.specular),v.shininess.value=Math.max(m.shininess,1e-4)}function d(v,m){m.gradientMap&&(v.gradientMap.value=m.gradientMap)}function p(v,m){v.metalness.value=m.metalness,m.metalnessMap&&(v.metalnessMap.value=m.metalnessMap,e(m.metalnessMap,v.metalnessMapTransform)),v.roughness.value=m.roughness,m.roughnessMap&&(v.roughnessMap.value=m.roughnessMap,e(m.roughnessMap,v.roughnessMapTransform)),m.envMap&&(v.envMapIntensity.value=m.envMapIntensity)}function f(v,m,y){v.ior.value=m.ior,m.diffuseRoughness>0&&(v.diffuseRoughness.value=m.diffuseRoughness,m.diffuseRoughnessMap&&(v.diffuseRoughnessMap.value=m.diffuseRoughnessMap,e(m.diffuseRoughnessMap,v.diffuseRoughnessMapTransform))),m.sheen>0&&(v.sheenColor.value.copy(m.sheenColor).multiplyScalar(m.sheen),v.sheenRoughness.value=m.sheenRoughness,m.sheenColorMap&&(v.sheenColorMap.value=m.sheenColorMap,e(m.sheenColorMap,v.sheenColorMapTransform)),m.sheenRoughnessMap&&(v.sheenRoughnessMap.value=m.sheenRoughnessMap,e(m.sheenRoughnessMap,v.sheenRoughnessMapTransform))),m.clearcoat>0&&(v.clearcoat.value=m.clearcoat,v.clearcoatRoughness.value=m.clearcoatRoughness,m.clearcoatMap&&(v.clearcoatMap.value=m.clearcoatMap,e(m.clearcoatMap,v.clearcoatMapTransform)),m.clearcoatRoughnessMap&&(v.clearcoatRoughnessMap.value=m.clearcoatRoughnessMap,e(m.clearcoatRoughnessMap,v.clearcoatRoughnessMapTransform)),m.clearcoatNormalMap&&(v.clearcoatNormalMap.value=m.clearcoatNormalMap,e(m.clearcoatNormalMap,v.clearcoatNormalMapTransform),v.clearcoatNormalScale.value.copy(m.clearcoatNormalScale),m.side===wn&&v.clearcoatNormalScale.value.negate())),m.dispersion>0&&(v.dispersion.value=m.dispersion),m.retroreflectivity>0&&(v.retroreflectivity.value=m.retroreflectivity),m.iridescence>0&&(v.iridescence.value=m.iridescence,v.iridescenceIOR.value=m.iridescenceIOR,v.iridescenceThicknessMinimum.value=m.iridescenceThicknessMinimum,v.iridescenceThicknessMaximum.value=m.iridescenceThicknessMaximum,m.iridescenceMap&&(v.iridescenceMap.value=m.iridescenceMap,e(m.iridescenceMap,v.iridescenceMapTransform)),m.iridescenceThicknessMap&&(v.iridescenceThicknessMap.value=m.iridescenceThicknessMap,e(m.iridescenceThicknessMap,v.iridescenceThicknessMapTransform))),m.transmission>0&&(v.transmission.value=m.transmission,v.transmissionSamplerMap.value=y.texture,v.transmissionSamplerSize.value.set(y.width,y.height),m.transmissionMap&&(v.transmissionMap.value=m.transmissionMap,e(m.transmissionMap,v.transmissionMapTransform)),v.thickness.value=m.thickness,m.thicknessMap&&(v.thicknessMap.value=m.thicknessMap,e(m.thicknessMap,v.thicknessMapTransform)),v.attenuationDistance.value=m.attenuationDistance,v.attenuationColor.value.copy(m.attenuationColor)),m.anisotropy>0&&(v.anisotropyVector.value.set(m.anisotropy*Math.cos(m.anisotropyRotation),m.anisotropy*Math.sin(m.anisotropyRotation)),m.anisotropyMap&&(v.anisotropyMap.value=m.anisotropyMap,e(m.anisotropyMap,v.anisotropyMapTransform))),v.specularIntensity.value=m.specularIntensity,v.specularColor.value.copy(m.specularColor),m.specularColorMap&&(v.specularColorMap.value=m.specularColorMap,e(m.specularColorMap,v.specularColorMapTransform)),m.specularIntensityMap&&(v.specularIntensityMap.value=m.specularIntensityMap,e(m.specularIntensityMap,v.specularIntensityMapTransform))}function g(v,m){m.matcap&&(v.matcap.value=m.matcap)}function _(v,m){let y=t.get(m).light;v.referencePosition.value.setFromMatrixPosition(y.matrixWorld),v.nearDistance.value=y.shadow.camera.near,v.farDistance.value=y.shadow.camera.far}return{refreshFogUniforms:i,refreshMaterialUniforms:s}}function dA(n,t,e,i){let s={},r={};function o(y,M){let b=M.program;i.uniformBlockBinding(y,b,s[y.id])}function a(y,M){let b=s[y.id];b===void 0&&(g(y),b=l(y),s[y.id]=b,y.addEventListener("dispose",v));let E=M.program;i.updateUBOMapping(y,E);let A=t.render.frame;r[y.id]!==A&&(u(y),r[y.id]=A)}function l(y){let M=n.createBuffer(),b=y.__size,E=y.usage;return n.bindBuffer(n.UNIFORM_BUFFER,M),n.bufferData(n.UNIFORM_BUFFER,b,E),n.bindBuffer(n.UNIFORM_BUFFER,null),M}function u(y){let M=s[y.id],b=y.uniforms,E=y.__cache;n.bindBuffer(n.UNIFORM_BUFFER,M);for(let A=0,x=b.length;A<x;A++){let T=b[A];if(Array.isArray(T))for(let L=0,R=T.length;L<R;L++)h(T[L],A,L,E);else h(T,A,0,E)}n.bindBuffer(n.UNIFORM_BUFFER,null)}function h(y,M,b,E){if(p(y,M,b,E)===!0){let A=y.__offset,x=y.value;if(Array.isArray(x)){let T=0;for(let L=0;L<x.length;L++){let R=x[L],P=_(R,!0);d(R,y.__data,T),T+=P.storage/Float32Array.BYTES_PER_ELEMENT}}else d(x,y.__data,0);n.bufferSubData(n.UNIFORM_BUFFER,A,y.__data)}}function d(y,M,b){typeof y=="number"||typeof y=="boolean"?M[b]=y:y.isMatrix3?(M[b]=y.elements[0],M[b+1]=y.elements[1],M[b+2]=y.elements[2],M[b+3]=0,M[b+4]=y.elements[3],M[b+5]=y.elements[4],M[b+6]=y.elements[5],M[b+7]=0,M[b+8]=y.elements[6],M[b+9]=y.elements[7],M[b+10]=y.elements[8],M[b+11]=0):ArrayBuffer.isView(y)?M.set(y.subarray(0,M.length-b),b):y.toArray(M,b)}function p(y,M,b,E){let A=y.value,x=M+"_"+b;if(Array.isArray(A)){E[x]===void 0&&(E[x]=[]);let T=E[x],L=!1;for(let R=0;R<A.length;R++)f(A[R],T,R)===!0&&(L=!0);return L}return f(A,E,x)}function f(y,M,b){if(M[b]===void 0)return typeof y=="number"||typeof y=="boolean"?M[b]=y:ArrayBuffer.isView(y)?M[b]=y.slice():M[b]=y.clone(),!0;{let E=M[b];if(typeof y=="number"||typeof y=="boolean"){if(E!==y)return M[b]=y,!0}else{if(ArrayBuffer.isView(y))return!0;if(E.equals(y)===!1)return E.copy(y),!0}}return!1}function g(y){let M=y.uniforms,b=0,E=16;for(let x=0,T=M.length;x<T;x++){let L=Array.isArray(M[x])?M[x]:[M[x]];for(let R=0,P=L.length;R<P;R++){let O=L[R],B=Array.isArray(O.value)?O.value:[O.value],I=Array.isArray(M[x])||Array.isArray(O.value),W=b;for(let F=0,Q=B.length;F<Q;F++){let G=B[F],tt=_(G,I),et=b%E,St=et%tt.boundary,Ot=et+St;b+=St,Ot!==0&&E-Ot<tt.storage&&(b+=E-Ot),F===0&&(W=b),b+=tt.storage}let $=O.type==="int"?Int32Array:O.type==="uint"?Uint32Array:Float32Array;O.__data=new $((b-W)/Float32Array.BYTES_PER_ELEMENT),O.__offset=W}}let A=b%E;return A>0&&(b+=E-A),y.__size=b,y.__cache={},this}function _(y,M){let b={boundary:0,storage:0};return typeof y=="number"||typeof y=="boolean"?(b.boundary=4,b.storage=4):y.isVector2?(b.boundary=8,b.storage=8):y.isVector3||y.isColor?(b.boundary=16,b.storage=12):y.isVector4?(b.boundary=16,b.storage=16):y.isMatrix3?(b.boundary=16,b.storage=48):y.isMatrix4?(b.boundary=16,b.storage=64):y.isTexture?Nt("WebGLRenderer: Texture samplers can not be part of an uniforms group."):ArrayBuffer.isView(y)?(b.boundary=16,b.storage=y.byteLength):Nt("WebGLRenderer: Unsupported uniform value type.",y),M===!0&&(b.boundary=16,b.storage=Math.ceil(b.storage/16)*16),b}function v(y){let M=y.target;M.removeEventListener("dispose",v),n.deleteBuffer(s[M.id]),delete s[M.id],delete r[M.id]}function m(){for(let y in s)n.deleteBuffer(s[y]);s={},r={}}return{bind:o,update:a,dispose:m}}var fA=new Uint16Array([12469,15057,12620,14925,13266,14620,13807,14376,14323,13990,14545,13625,14713,13328,14840,12882,14931,12528,14996,12233,15039,11829,15066,11525,15080,11295,15085,10976,15082,10705,15073,10495,13880,14564,13898,14542,13977,14430,14158,14124,14393,13732,14556,13410,14702,12996,14814,12596,14891,12291,14937,11834,14957,11489,14958,11194,14943,10803,14921,10506,14893,10278,14858,9960,14484,14039,14487,14025,14499,13941,14524,13740,14574,13468,14654,13106,14743,12678,14818,12344,14867,11893,14889,11509,14893,11180,14881,10751,14852,10428,14812,10128,14765,9754,14712,9466,14764,13480,14764,13475,14766,13440,14766,13347,14769,13070,14786,12713,14816,12387,14844,11957,14860,11549,14868,11215,14855,10751,14825,10403,14782,10044,14729,9651,14666,9352,14599,9029,14967,12835,14966,12831,14963,12804,14954,12723,14936,12564,14917,12347,14900,11958,14886,11569,14878,11247,14859,10765,14828,10401,14784,10011,14727,9600,14660,9289,14586,8893,14508,8533,15111,12234,15110,12234,15104,12216,15092,12156,15067,12010,15028,11776,14981,11500,14942,11205,14902,10752,14861,10393,14812,9991,14752,9570,14682,9252,14603,8808,14519,8445,14431,8145,15209,11449,15208,11451,15202,11451,15190,11438,15163,11384,15117,11274,15055,10979,14994,10648,14932,10343,14871,9936,14803,9532,14729,9218,14645,8742,14556,8381,14461,8020,14365,7603,15273,10603,15272,10607,15267,10619,15256,10631,15231,10614,15182,10535,15118,10389,15042,10167,14963,9787,14883,9447,14800,9115,14710,8665,14615,8318,14514,7911,14411,7507,14279,7198,15314,9675,15313,9683,15309,9712,15298,9759,15277,9797,15229,9773,15166,9668,15084,9487,14995,9274,14898,8910,14800,8539,14697,8234,14590,7790,14479,7409,14367,7067,14178,6621,15337,8619,15337,8631,15333,8677,15325,8769,15305,8871,15264,8940,15202,8909,15119,8775,15022,8565,14916,8328,14804,8009,14688,7614,14569,7287,14448,6888,14321,6483,14088,6171,15350,7402,15350,7419,15347,7480,15340,7613,15322,7804,15287,7973,15229,8057,15148,8012,15046,7846,14933,7611,14810,7357,14682,7069,14552,6656,14421,6316,14251,5948,14007,5528,15356,5942,15356,5977,15353,6119,15348,6294,15332,6551,15302,6824,15249,7044,15171,7122,15070,7050,14949,6861,14818,6611,14679,6349,14538,6067,14398,5651,14189,5311,13935,4958,15359,4123,15359,4153,15356,4296,15353,4646,15338,5160,15311,5508,15263,5829,15188,6042,15088,6094,14966,6001,14826,5796,14678,5543,14527,5287,14377,4985,14133,4586,13869,4257,15360,1563,15360,1642,15358,2076,15354,2636,15341,3350,15317,4019,15273,4429,15203,4732,15105,4911,14981,4932,14836,4818,14679,4621,14517,4386,14359,4156,14083,3795,13808,3437,15360,122,15360,137,15358,285,15355,636,15344,1274,15322,2177,15281,2765,15215,3223,15120,3451,14995,3569,14846,3567,14681,3466,14511,3305,14344,3121,14037,2800,13753,2467,15360,0,15360,1,15359,21,15355,89,15346,253,15325,479,15287,796,15225,1148,15133,1492,15008,1749,14856,1882,14685,1886,14506,1783,14324,1608,13996,1398,13702,1183]),Mi=null;function pA(){return Mi===null&&(Mi=new _a(fA,16,16,Ss,di),Mi.name="DFG_LUT",Mi.minFilter=bn,Mi.magFilter=bn,Mi.wrapS=gi,Mi.wrapT=gi,Mi.generateMipmaps=!1,Mi.needsUpdate=!0),Mi}var nh=class{constructor(t={}){let{canvas:e=Y0(),context:i=null,depth:s=!0,stencil:r=!1,alpha:o=!1,antialias:a=!1,premultipliedAlpha:l=!0,preserveDrawingBuffer:u=!1,powerPreference:h="default",failIfMajorPerformanceCaveat:d=!1,reversedDepthBuffer:p=!1,outputBufferType:f=Rn}=t;this.isWebGLRenderer=!0;let g;if(i!==null){if(typeof WebGLRenderingContext<"u"&&i instanceof WebGLRenderingContext)throw new Error("THREE.WebGLRenderer: WebGL 1 is not supported since r163.");g=i.getContextAttributes().alpha}else g=o;let _=f,v=new Set([xu,yu,_u]),m=new Set([Rn,hi,lo,Qs,mu,gu]),y=new Uint32Array(4),M=new Int32Array(4),b={textures:[],min:[],max:[],resolution:[]},E=null,A=null,x=[],T=[],L=null;this.domElement=e,this.debug={checkShaderErrors:!0,diagnostics:{keywords:!1},onShaderError:null},this.autoClear=!0,this.autoClearColor=!0,this.autoClearDepth=!0,this.autoClearStencil=!0,this.sortObjects=!0,this.clippingPlanes=[],this.localClippingEnabled=!1,this.toneMapping=wi,this.toneMappingExposure=1,this.transmissionResolutionScale=1;let R=this,P=!1,O=null,B=null,I=null,W=null;this._outputColorSpace=kn;let $=0,F=0,Q=null,G=-1,tt=null,et=new Re,St=new Re,Ot=null,Z=new Xt(0),gt=0,wt=e.width,It=e.height,_t=1,zt=null,Le=null,Ut=new Re(0,0,wt,It),ae=new Re(0,0,wt,It),he=!1,Qt=new fs,rn=new Bc,Ve=!1,Tn=!1,Pe=new oe,pi=new N,Je=new Re,Hn={background:null,fog:null,environment:null,overrideMaterial:null,isScene:!0},Wn=!1;function $n(){return Q===null?_t:1}let k=i;function Xn(S,U){return e.getContext(S,U)}let Te,Ae,vt,Ge,kt,Ht,C,w,V,it,j,lt,pt,Y,J,ut,D,K,q,ht,ot,ct,Rt;try{let S={alpha:!0,depth:s,stencil:r,antialias:a,premultipliedAlpha:l,preserveDrawingBuffer:u,powerPreference:h,failIfMajorPerformanceCaveat:d};if("setAttribute"in e&&e.setAttribute("data-engine",`three.js r${"187"}`),e.addEventListener("webglcontextlost",Dt,!1),e.addEventListener("webglcontextrestored",qt,!1),e.addEventListener("webglcontextcreationerror",yt,!1),k===null){let U="webgl2";if(k=Xn(U,S),k===null)throw Xn(U)?new Error("THREE.WebGLRenderer: Error creating WebGL context with your selected attributes."):new Error("THREE.WebGLRenderer: Error creating WebGL context.")}Zt()}catch(S){throw e.removeEventListener("webglcontextlost",Dt,!1),e.removeEventListener("webglcontextrestored",qt,!1),e.removeEventListener("webglcontextcreationerror",yt,!1),Bt("WebGLRenderer: "+S.message),S}function Zt(){Te=new T1(k),Te.init(),ot=new aA(k,Te),Ae=new p1(k,Te,t,ot),vt=new rA(k,Te),Ae.reversedDepthBuffer&&p&&vt.buffers.depth.setReversed(!0),B=k.createFramebuffer(),I=k.createFramebuffer(),W=k.createFramebuffer(),Ge=new C1(k),kt=new $T,Ht=new oA(k,Te,vt,kt,Ae,ot,Ge),C=new S1(R),w=new Pw(k),ct=new d1(k,w),V=new A1(k,w,Ge,ct),it=new P1(k,V,w,ct,Ge),K=new R1(k,Ae,Ht),J=new m1(kt),j=new WT(R,C,Te,Ae,ct,J),lt=new hA(R,kt),pt=new qT,Y=new QT(Te),D=new h1(R,C,vt,it,g,l),ut=new sA(R,it,Ae),Rt=new dA(k,Ge,Ae,vt),q=new f1(k,Te,Ge),ht=new E1(k,Te,Ge),Ge.programs=j.programs,R.capabilities=Ae,R.extensions=Te,R.properties=kt,R.renderLists=pt,R.shadowMap=ut,R.state=vt,R.info=Ge}_!==Rn&&(L=new D1(_,e.width,e.height,a,s,r));let st=new jf(R,k);this.xr=st,this.getContext=function(){return k},this.getContextAttributes=function(){return k.getContextAttributes()},this.forceContextLoss=function(){let S=Te.get("WEBGL_lose_context");S&&S.loseContext()},this.forceContextRestore=function(){let S=Te.get("WEBGL_lose_context");S&&S.restoreContext()},this.getPixelRatio=function(){return _t},this.setPixelRatio=function(S){S!==void 0&&(_t=S,this.setSize(wt,It,!1))},this.getSize=function(S){return S.set(wt,It)},this.setSize=function(S,U,X=!0){if(st.isPresenting){Nt("WebGLRenderer: Can't change size while VR device is presenting.");return}wt=S,It=U,e.width=Math.floor(S*_t),e.height=Math.floor(U*_t),X===!0&&(e.style.width=S+"px",e.style.height=U+"px"),L!==null&&L.setSize(e.width,e.height),this.setViewport(0,0,S,U)},this.getDrawingBufferSize=function(S){return S.set(wt*_t,It*_t).floor()},this.setDrawingBufferSize=function(S,U,X){wt=S,It=U,_t=X,e.width=Math.floor(S*X),e.height=Math.floor(U*X),this.setViewport(0,0,S,U)},this.setEffects=function(S){if(_===Rn){Bt("WebGLRenderer: setEffects() requires outputBufferType set to HalfFloatType or FloatType.");return}if(S){for(let U=0;U<S.length;U++)if(S[U].isOutputPass===!0){Nt("WebGLRenderer: OutputPass is not needed in setEffects(). Tone mapping and color space conversion are applied automatically.");break}}L.setEffects(S||[])},this.getCurrentViewport=function(S){return S.copy(et)},this.getViewport=function(S){return S.copy(Ut)},this.setViewport=function(S,U,X,z){S.isVector4?Ut.set(S.x,S.y,S.z,S.w):Ut.set(S,U,X,z),vt.viewport(et.copy(Ut).multiplyScalar($n()).round())},this.getScissor=function(S){return S.copy(ae)},this.setScissor=function(S,U,X,z){S.isVector4?ae.set(S.x,S.y,S.z,S.w):ae.set(S,U,X,z),vt.scissor(St.copy(ae).multiplyScalar($n()).round())},this.getScissorTest=function(){return he},this.setScissorTest=function(S){vt.setScissorTest(he=S)},this.setOpaqueSort=function(S){zt=S},this.setTransparentSort=function(S){Le=S},this.getClearColor=function(S){return S.copy(D.getClearColor())},this.setClearColor=function(){D.setClearColor(...arguments)},this.getClearAlpha=function(){return D.getClearAlpha()},this.setClearAlpha=function(){D.setClearAlpha(...arguments)},this.clear=function(S=!0,U=!0,X=!0){let z=0;if(S){let H=!1;if(Q!==null){let mt=Q.texture.format;H=v.has(mt)}if(H){let mt=Q.texture.type,Tt=m.has(mt),dt=D.getClearColor(),bt=D.getClearAlpha(),Ct=dt.r,Wt=dt.g,te=dt.b;Tt?(y[0]=Ct,y[1]=Wt,y[2]=te,y[3]=bt,k.clearBufferuiv(k.COLOR,0,y)):(M[0]=Ct,M[1]=Wt,M[2]=te,M[3]=bt,k.clearBufferiv(k.COLOR,0,M))}else z|=k.COLOR_BUFFER_BIT}U&&(z|=k.DEPTH_BUFFER_BIT,this.state.buffers.depth.setMask(!0)),X&&(z|=k.STENCIL_BUFFER_BIT,this.state.buffers.stencil.setMask(4294967295)),z!==0&&k.clear(z)},this.clearColor=function(){this.clear(!0,!1,!1)},this.clearDepth=function(){this.clear(!1,!0,!1)},this.clearStencil=function(){this.clear(!1,!1,!0)},this.setNodesHandler=function(S){S.setRenderer(this),O=S},this.dispose=function(){e.removeEventListener("webglcontextlost",Dt,!1),e.removeEventListener("webglcontextrestored",qt,!1),e.removeEventListener("webglcontextcreationerror",yt,!1),D.dispose(),pt.dispose(),Y.dispose(),Ht.dispose(),kt.dispose(),C.dispose(),it.dispose(),V.dispose(),ct.dispose(),Rt.dispose(),j.dispose(),st.dispose(),st.removeEventListener("sessionstart",zp),st.removeEventListener("sessionend",Vp),Cs.stop()};function Dt(S){S.preventDefault(),Nf("WebGLRenderer: Context Lost."),P=!0}function qt(){Nf("WebGLRenderer: Context Restored."),P=!1;let S=Ge.autoReset,U=ut.enabled,X=ut.autoUpdate,z=ut.needsUpdate,H=ut.type;Zt(),Ge.autoReset=S,ut.enabled=U,ut.autoUpdate=X,ut.needsUpdate=z,ut.type=H}function yt(S){Bt("WebGLRenderer: A WebGL context could not be created. Reason: ",S.statusMessage)}function fe(S){let U=S.target;U.removeEventListener("dispose",fe),Ke(U)}function Ke(S){Qi(S),kt.remove(S)}function Qi(S){let U=kt.get(S).programs;U!==void 0&&(U.forEach(function(X){j.releaseProgram(X)}),S.isShaderMaterial&&j.releaseShaderCache(S))}this.renderBufferDirect=function(S,U,X,z,H,mt){U===null&&(U=Hn);let Tt=H.isMesh&&H.matrixWorld.determinantAffine()<0,dt=Cy(S,U,X,z,H);vt.setMaterial(z,Tt);let bt=X.index,Ct=1;if(z.wireframe===!0){if(bt=V.getWireframeAttribute(X),bt===void 0)return;Ct=2}let Wt=X.drawRange,te=X.attributes.position,At=Wt.start*Ct,ee=(Wt.start+Wt.count)*Ct;mt!==null&&(At=Math.max(At,mt.start*Ct),ee=Math.min(ee,(mt.start+mt.count)*Ct)),bt!==null?(At=Math.max(At,0),ee=Math.min(ee,bt.count)):te!=null&&(At=Math.max(At,0),ee=Math.min(ee,te.count));let ke=ee-At;if(ke<0||ke===1/0)return;ct.setup(H,z,dt,X,bt);let ye,_e=q;if(bt!==null&&(ye=w.get(bt),_e=ht,_e.setIndex(ye)),H.isMesh)z.wireframe===!0?(vt.setLineWidth(z.wireframeLinewidth*$n()),_e.setMode(k.LINES)):_e.setMode(k.TRIANGLES);else if(H.isLine){let cn=z.linewidth;cn===void 0&&(cn=1),vt.setLineWidth(cn*$n()),H.isLineSegments?_e.setMode(k.LINES):H.isLineLoop?_e.setMode(k.LINE_LOOP):_e.setMode(k.LINE_STRIP)}else H.isPoints?_e.setMode(k.POINTS):H.isSprite&&_e.setMode(k.TRIANGLES);if(H.isBatchedMesh)if(Te.get("WEBGL_multi_draw"))_e.renderMultiDraw(H._multiDrawStarts,H._multiDrawCounts,H._multiDrawCount);else{let cn=H._multiDrawStarts,Et=H._multiDrawCounts,vn=H._multiDrawCount,le=bt?w.get(bt).bytesPerElement:1,Rs=kt.get(z).currentProgram.getUniforms();for(let un=0;un<vn;un++)Rs.setValue(k,"_gl_DrawID",un),_e.render(cn[un]/le,Et[un])}else if(H.isInstancedMesh)_e.renderInstances(At,ke,H.count);else if(X.isInstancedBufferGeometry){let cn=X._maxInstanceCount!==void 0?X._maxInstanceCount:1/0,Et=Math.min(X.instanceCount,cn);_e.renderInstances(At,ke,Et)}else _e.render(At,ke)};function Bp(S,U,X,z){O!==null&&S.isNodeMaterial&&O.setObject(z,S),Ve===!0&&J.setState(S,X,!1),S.transparent===!0&&S.side===pn&&S.forceSinglePass===!1?(S.side=wn,S.needsUpdate=!0,To(S,U,z),S.side=ws,S.needsUpdate=!0,To(S,U,z),S.side=pn):To(S,U,z)}this.compile=function(S,U,X=null){X===null&&(X=S),O!==null&&O.renderStart(S,U,X),A=Y.get(X),A.init(U),T.push(A),X.traverseVisible(function(H){H.isLight&&H.layers.test(U.layers)&&(A.pushLight(H),H.castShadow&&A.pushShadow(H))}),S!==X&&S.traverseVisible(function(H){H.isLight&&H.layers.test(U.layers)&&(A.pushLight(H),H.castShadow&&A.pushShadow(H))}),A.setupLights(),O!==null&&O.updateLights(A.state.lightsArray),Tn=this.localClippingEnabled,Ve=J.init(this.clippingPlanes,Tn),Ve===!0&&J.setGlobalState(this.clippingPlanes,U),O!==null&&ut.render(A.state.shadowsArray,X,U);let z=new Set;return S.traverse(function(H){if(!(H.isMesh||H.isPoints||H.isLine||H.isSprite))return;let mt=H.material;if(mt)if(Array.isArray(mt))for(let Tt=0;Tt<mt.length;Tt++){let dt=mt[Tt];Bp(dt,X,U,H),z.add(dt)}else Bp(mt,X,U,H),z.add(mt)}),A=T.pop(),O!==null&&O.renderEnd(),z},this.compileAsync=function(S,U,X=null){let z=this.compile(S,U,X);return new Promise(H=>{function mt(){if(z.forEach(function(Tt){let bt=kt.get(Tt).currentProgram;(bt===void 0||bt.isReady())&&z.delete(Tt)}),z.size===0){H(S);return}setTimeout(mt,10)}Te.get("KHR_parallel_shader_compile")!==null?mt():setTimeout(mt,10)})};let Ch=null;function Ay(S){Ch&&Ch(S)}function zp(){Cs.stop()}function Vp(){Cs.start()}let Cs=new Rv;Cs.setAnimationLoop(Ay),typeof self<"u"&&Cs.setContext(self),this.setAnimationLoop=function(S){Ch=S,st.setAnimationLoop(S),S===null?Cs.stop():Cs.start()},st.addEventListener("sessionstart",zp),st.addEventListener("sessionend",Vp),this.render=function(S,U){if(U!==void 0&&U.isCamera!==!0){Bt("WebGLRenderer.render: camera is not an instance of THREE.Camera.");return}if(P===!0)return;O!==null&&O.renderStart(S,U);let X=st.enabled===!0&&st.isPresenting===!0,z=L!==null&&(Q===null||X)&&L.begin(R,Q);if(S.matrixWorldAutoUpdate===!0&&S.updateMatrixWorld(),U.parent===null&&U.matrixWorldAutoUpdate===!0&&U.updateMatrixWorld(),st.enabled===!0&&st.isPresenting===!0&&(L===null||L.isCompositing()===!1)&&(st.cameraAutoUpdate===!0&&st.updateCamera(U),U=st.getCamera()),S.isScene===!0&&S.onBeforeRender(R,S,U,Q),A=Y.get(S,T.length),A.init(U),A.state.textureUnits=Ht.getTextureUnits(),T.push(A),Pe.multiplyMatrices(U.projectionMatrix,U.matrixWorldInverse),U.isArrayCamera?rn.setFromArrayCamera(U):Qt.setFromProjectionMatrix(Pe,Kn,U.reversedDepth),Tn=this.localClippingEnabled,Ve=J.init(this.clippingPlanes,Tn),E=pt.get(S,x.length),E.init(),x.push(E),this.info.render.frame++,st.enabled===!0&&st.isPresenting===!0){let Tt=R.xr.getDepthSensingMesh();Tt!==null&&Rh(Tt,U,-1/0,R.sortObjects)}Rh(S,U,0,R.sortObjects),E.finish(),O!==null&&O.updateLights(A.state.lightsArray),R.sortObjects===!0&&E.sort(zt,Le),Wn=st.enabled===!1||st.isPresenting===!1||st.hasDepthSensing()===!1,Wn&&D.addToRenderList(E,S),this.info.autoReset===!0&&this.info.reset(),Ve===!0&&J.beginShadows();let H=A.state.shadowsArray;if(ut.render(H,S,U),Ve===!0&&J.endShadows(),(z&&L.hasRenderPass())===!1){let Tt=E.opaque,dt=E.transmissive;if(A.setupLights(),U.isArrayCamera){let bt=U.cameras;if(dt.length>0)for(let Ct=0,Wt=bt.length;Ct<Wt;Ct++){let te=bt[Ct];Hp(Tt,dt,S,te)}Wn&&D.render(S);for(let Ct=0,Wt=bt.length;Ct<Wt;Ct++){let te=bt[Ct];Gp(E,S,te,te.viewport)}}else dt.length>0&&Hp(Tt,dt,S,U),Wn&&D.render(S),Gp(E,S,U)}Q!==null&&F===0&&(Ht.updateMultisampleRenderTarget(Q),Ht.updateRenderTargetMipmap(Q)),z&&L.end(R),S.isScene===!0&&S.onAfterRender(R,S,U),ct.resetDefaultState(),G=-1,tt=null,T.pop(),T.length>0?(A=T[T.length-1],Ht.setTextureUnits(A.state.textureUnits),Ve===!0&&J.setGlobalState(R.clippingPlanes,A.state.camera)):A=null,x.pop(),x.length>0?E=x[x.length-1]:E=null,O!==null&&O.renderEnd()};function Rh(S,U,X,z){if(S.visible===!1)return;if(S.layers.test(U.layers)){if(S.isGroup)X=S.renderOrder;else if(S.isLOD)S.autoUpdate===!0&&S.update(U);else if(S.isLight)A.pushLight(S),S.castShadow&&A.pushShadow(S);else if(S.isSprite){let Tt=U.isArrayCamera?rn:Qt;if(!S.frustumCulled||S.intersectsFrustum(Tt)){z&&Je.setFromMatrixPosition(S.matrixWorld).applyMatrix4(Pe);let dt=it.update(S),bt=S.material;bt.visible&&E.push(S,dt,bt,X,Je.z,null,U)}}else if(S.isMesh||S.isLine||S.isPoints){let Tt=U.isArrayCamera?rn:Qt;if(!S.frustumCulled||S.intersectsFrustum(Tt)){let dt=it.update(S),bt=S.material;if(z&&(S.boundingSphere!==void 0?(S.boundingSphere===null&&S.computeBoundingSphere(),Je.copy(S.boundingSphere.center)):(dt.boundingSphere===null&&dt.computeBoundingSphere(),Je.copy(dt.boundingSphere.center)),Je.applyMatrix4(S.matrixWorld).applyMatrix4(Pe)),Array.isArray(bt)){let Ct=dt.groups;for(let Wt=0,te=Ct.length;Wt<te;Wt++){let At=Ct[Wt],ee=bt[At.materialIndex];ee&&ee.visible&&E.push(S,dt,ee,X,Je.z,At,U)}}else bt.visible&&E.push(S,dt,bt,X,Je.z,null,U)}}}let mt=S.children;for(let Tt=0,dt=mt.length;Tt<dt;Tt++)Rh(mt[Tt],U,X,z)}function Gp(S,U,X,z){let{opaque:H,transmissive:mt,transparent:Tt}=S;A.setupLightsView(X),Ve===!0&&J.setGlobalState(R.clippingPlanes,X),z&&vt.viewport(et.copy(z)),H.length>0&&ml(H,U,X),mt.length>0&&ml(mt,U,X),Tt.length>0&&ml(Tt,U,X),vt.buffers.depth.setTest(!0),vt.buffers.depth.setMask(!0),vt.buffers.color.setMask(!0),vt.setPolygonOffset(!1)}function Hp(S,U,X,z){if((X.isScene===!0?X.overrideMaterial:null)!==null)return;if(A.state.transmissionRenderTarget[z.id]===void 0){let At=Te.has("EXT_color_buffer_half_float")||Te.has("EXT_color_buffer_float");A.state.transmissionRenderTarget[z.id]=new Bn(1,1,{generateMipmaps:!0,type:At?di:Rn,minFilter:Yi,samples:Math.max(4,Ae.samples),stencilBuffer:r,resolveDepthBuffer:!1,resolveStencilBuffer:!1,storeMultisampledDepthBuffer:!1,storeMultisampledStencilBuffer:!1,colorSpace:ne.workingColorSpace})}let mt=A.state.transmissionRenderTarget[z.id],Tt=z.viewport||et;mt.setSize(Tt.z*R.transmissionResolutionScale,Tt.w*R.transmissionResolutionScale);let dt=R.getRenderTarget(),bt=R.getActiveCubeFace(),Ct=R.getActiveMipmapLevel();R.setRenderTarget(mt),R.getClearColor(Z),gt=R.getClearAlpha(),gt<1&&R.setClearColor(16777215,.5),R.clear(),Wn&&D.render(X);let Wt=R.toneMapping;R.toneMapping=wi;let te=z.viewport;if(z.viewport!==void 0&&(z.viewport=void 0),A.setupLightsView(z),Ve===!0&&J.setGlobalState(R.clippingPlanes,z),ml(S,X,z),Ht.updateMultisampleRenderTarget(mt),Ht.updateRenderTargetMipmap(mt),Te.has("WEBGL_multisampled_render_to_texture")===!1){let At=!1;for(let ee=0,ke=U.length;ee<ke;ee++){let ye=U[ee],{object:_e,geometry:cn,material:Et,group:vn}=ye;if(Et.side===pn&&_e.layers.test(z.layers)){let le=Et.side;Et.side=wn,Et.needsUpdate=!0,Wp(_e,X,z,cn,Et,vn),Et.side=le,Et.needsUpdate=!0,At=!0}}At===!0&&(Ht.updateMultisampleRenderTarget(mt),Ht.updateRenderTargetMipmap(mt))}R.setRenderTarget(dt,bt,Ct),R.setClearColor(Z,gt),te!==void 0&&(z.viewport=te),R.toneMapping=Wt}function ml(S,U,X){let z=U.isScene===!0?U.overrideMaterial:null;for(let H=0,mt=S.length;H<mt;H++){let Tt=S[H],{object:dt,geometry:bt,group:Ct}=Tt,Wt=Tt.material;Wt.allowOverride===!0&&z!==null&&(Wt=z),dt.layers.test(X.layers)&&Wp(dt,U,X,bt,Wt,Ct)}}function Wp(S,U,X,z,H,mt){O!==null&&H.isNodeMaterial&&O.setObject(S,H),S.onBeforeRender(R,U,X,z,H,mt),S.modelViewMatrix.multiplyMatrices(X.matrixWorldInverse,S.matrixWorld),S.normalMatrix.getNormalMatrix(S.modelViewMatrix),H.onBeforeRender(R,U,X,z,S,mt),H.transparent===!0&&H.side===pn&&H.forceSinglePass===!1?(H.side=wn,H.needsUpdate=!0,R.renderBufferDirect(X,U,z,H,S,mt),H.side=ws,H.needsUpdate=!0,R.renderBufferDirect(X,U,z,H,S,mt),H.side=pn):R.renderBufferDirect(X,U,z,H,S,mt),S.onAfterRender(R,U,X,z,H,mt)}function $p(S){let U=0;for(let X of S)X.texture!==null&&U++;return U}function To(S,U,X){U.isScene!==!0&&(U=Hn);let z=kt.get(S),H=A.state.lights,mt=A.state.shadowsArray,Tt=H.state.version,dt=j.getParameters(S,H.state,mt,U,X,A.state.lightProbeGridArray),bt=j.getProgramCacheKey(dt),Ct=z.programs;z.environment=S.isMeshStandardMaterial||S.isMeshLambertMaterial||S.isMeshPhongMaterial?U.environment:null,z.fog=U.fog;let Wt=S.isMeshStandardMaterial||S.isMeshLambertMaterial&&!S.envMap||S.isMeshPhongMaterial&&!S.envMap;z.envMap=C.get(S.envMap||z.environment,Wt),z.envMapRotation=z.environment!==null&&S.envMap===null?U.environmentRotation:S.envMapRotation,Ct===void 0&&(S.addEventListener("dispose",fe),Ct=new Map,z.programs=Ct,z.programVariants=new Map);let te=Ct.get(bt);if(te!==void 0){if(z.currentProgram===te&&z.lightsStateVersion===Tt)return qp(S,dt),te}else dt.uniforms=j.getUniforms(S),O!==null&&S.isNodeMaterial&&O.build(S,X,dt),S.onBeforeCompile(dt,R),te=j.acquireProgram(dt,bt),Ct.set(bt,te),z.uniforms=dt.uniforms;let At=z.uniforms;return(!S.isShaderMaterial&&!S.isRawShaderMaterial||S.clipping===!0)&&(At.clippingPlanes=J.uniform),qp(S,dt),z.needsLights=Py(S),z.lightsStateVersion=Tt,z.needsLights&&(At.ambientLightColor.value=H.state.ambient,At.lightProbe.value=H.state.probe,At.sunLights.value=H.state.sun,At.sunLightShadows.value=H.state.sunShadow,At.directionalLights.value=H.state.directional,At.directionalLightShadows.value=H.state.directionalShadow,At.spotLights.value=H.state.spot,At.spotLightShadows.value=H.state.spotShadow,At.rectAreaLights.value=H.state.rectArea,At.ltc_1.value=H.state.rectAreaLTC1,At.ltc_2.value=H.state.rectAreaLTC2,At.pointLights.value=H.state.point,At.pointLightShadows.value=H.state.pointShadow,At.hemisphereLights.value=H.state.hemi,At.sunShadowMatrix.value=H.state.sunShadowMatrix,At.sunShadowCascade.value=H.state.sunShadowCascade,At.directionalShadowMatrix.value=H.state.directionalShadowMatrix,At.spotLightMatrix.value=H.state.spotLightMatrix,At.spotLightMap.value=H.state.spotLightMap,At.pointShadowMatrix.value=H.state.pointShadowMatrix),z.numLightProbeGrids=$p(A.state.lightProbeGridArray),z.currentProgram=te,z.uniformsList=null,te}function Ey(S,U,X,z,H){let mt=kt.get(S),Tt=mt.currentProgram.id+","+z+","+H,dt=mt.programVariants.get(Tt);return dt===void 0?(dt=To(S,U,X),mt.programVariants.set(Tt,dt)):(mt.currentProgram=dt,mt.uniformsList=null,mt.outputColorSpace=z,mt.toneMapping=H),dt}function Xp(S){if(S.uniformsList===null){let U=S.currentProgram.getUniforms();S.uniformsList=co.seqWithValue(U.seq,S.uniforms)}return S.uniformsList}function qp(S,U){let X=kt.get(S);X.outputColorSpace=U.outputColorSpace,X.batching=U.batching,X.batchingColor=U.batchingColor,X.instancing=U.instancing,X.instancingColor=U.instancingColor,X.instancingMorph=U.instancingMorph,X.skinning=U.skinning,X.morphTargets=U.morphTargets,X.morphNormals=U.morphNormals,X.morphColors=U.morphColors,X.morphTargetsCount=U.morphTargetsCount,X.numClippingPlanes=U.numClippingPlanes,X.numIntersection=U.numClipIntersection,X.vertexAlphas=U.vertexAlphas,X.vertexTangents=U.vertexTangents,X.toneMapping=U.toneMapping}function Cy(S,U,X,z,H){U.isScene!==!0&&(U=Hn),Ht.resetTextureUnits();let mt=U.fog,Tt=z.isMeshStandardMaterial||z.isMeshLambertMaterial||z.isMeshPhongMaterial?U.environment:null,dt=Q===null?R.outputColorSpace:Q.isXRRenderTarget===!0?Q.texture.colorSpace:ne.workingColorSpace,bt=z.isMeshStandardMaterial||z.isMeshLambertMaterial&&!z.envMap||z.isMeshPhongMaterial&&!z.envMap,Ct=C.get(z.envMap||Tt,bt),Wt=z.vertexColors===!0&&!!X.attributes.color&&X.attributes.color.itemSize===4,te=!!X.attributes.tangent&&(!!z.normalMap||z.anisotropy>0),At=!!X.morphAttributes.position,ee=!!X.morphAttributes.normal,ke=!!X.morphAttributes.color,ye=wi;z.toneMapped&&(Q===null||Q.isXRRenderTarget===!0)&&(ye=R.toneMapping);let _e=X.morphAttributes.position||X.morphAttributes.normal||X.morphAttributes.color,cn=_e!==void 0?_e.length:0,Et=kt.get(z),vn=A.state.lights;if(Ve===!0&&(Tn===!0||S!==tt)){let Ie=S===tt&&z.id===G;J.setState(z,S,Ie)}let le=!1,Rs=!1;z.version===Et.__version?Et.needsLights&&Et.lightsStateVersion!==vn.state.version||H.isBatchedMesh&&Et.batching===!1||!H.isBatchedMesh&&Et.batching===!0||H.isBatchedMesh&&Et.batchingColor===!0&&H._colorsTexture===null||H.isBatchedMesh&&Et.batchingColor===!1&&H._colorsTexture!==null||H.isInstancedMesh&&Et.instancing===!1||!H.isInstancedMesh&&Et.instancing===!0||H.isSkinnedMesh&&Et.skinning===!1||!H.isSkinnedMesh&&Et.skinning===!0||H.isInstancedMesh&&Et.instancingColor===!0&&H.instanceColor===null||H.isInstancedMesh&&Et.instancingColor===!1&&H.instanceColor!==null||H.isInstancedMesh&&Et.instancingMorph===!0&&H.morphTexture===null||H.isInstancedMesh&&Et.instancingMorph===!1&&H.morphTexture!==null||Et.envMap!==Ct||z.fog===!0&&Et.fog!==mt||Et.numClippingPlanes!==void 0&&(Et.numClippingPlanes!==J.numPlanes||Et.numIntersection!==J.numIntersection)||Et.vertexAlphas!==Wt||Et.vertexTangents!==te||Et.morphTargets!==At||Et.morphNormals!==ee||Et.morphColors!==ke||Et.morphTargetsCount!==cn||Et.numLightProbeGrids!==$p(A.state.lightProbeGridArray)?le=!0:(Et.outputColorSpace!==dt||Et.toneMapping!==ye)&&(Rs=!0):(le=!0,Et.__version=z.version);let un=Et.currentProgram;(le===!0||Rs===!0)&&(un=Rs===!0?Ey(z,U,H,dt,ye):To(z,U,H),O&&z.isNodeMaterial&&O.onUpdateProgram(z,un,Et));let gl=!1,ts=!1,Ps=!1,se=un.getUniforms(),on=Et.uniforms;if(vt.useProgram(un.program)&&(gl=!0,ts=!0,Ps=!0),z.id!==G&&(G=z.id,ts=!0),gl||tt!==S){vt.buffers.depth.getReversed()&&S.reversedDepth!==!0&&(S._reversedDepth=!0,S.updateProjectionMatrix()),se.setValue(k,"projectionMatrix",S.projectionMatrix),se.setValue(k,"viewMatrix",S.matrixWorldInverse);let je=se.map.cameraPosition;je!==void 0&&je.setValue(k,pi.setFromMatrixPosition(S.matrixWorld)),Ae.logarithmicDepthBuffer&&se.setValue(k,"logDepthBufFC",2/(Math.log(S.far+1)/Math.LN2)),(z.isMeshPhongMaterial||z.isMeshToonMaterial||z.isMeshLambertMaterial||z.isMeshBasicMaterial||z.isMeshStandardMaterial||z.isShaderMaterial)&&se.setValue(k,"isOrthographic",S.isOrthographicCamera===!0),tt!==S&&(tt=S,ts=!0,Ps=!0)}if(Et.needsLights&&(vn.state.sunShadowMap.length>0&&se.setValue(k,"sunShadowMap",vn.state.sunShadowMap,Ht),vn.state.directionalShadowMap.length>0&&se.setValue(k,"directionalShadowMap",vn.state.directionalShadowMap,Ht),vn.state.spotShadowMap.length>0&&se.setValue(k,"spotShadowMap",vn.state.spotShadowMap,Ht),vn.state.pointShadowMap.length>0&&se.setValue(k,"pointShadowMap",vn.state.pointShadowMap,Ht)),H.isSkinnedMesh){se.setOptional(k,H,"bindMatrix"),se.setOptional(k,H,"bindMatrixInverse");let Ie=H.skeleton;Ie&&(Ie.boneTexture===null&&Ie.computeBoneTexture(),se.setValue(k,"boneTexture",Ie.boneTexture,Ht))}H.isBatchedMesh&&(se.setOptional(k,H,"batchingTexture"),se.setValue(k,"batchingTexture",H._matricesTexture,Ht),se.setOptional(k,H,"batchingIdTexture"),se.setValue(k,"batchingIdTexture",H._indirectTexture,Ht),se.setOptional(k,H,"batchingColorTexture"),H._colorsTexture!==null&&se.setValue(k,"batchingColorTexture",H._colorsTexture,Ht));let ti=X.morphAttributes;if((ti.position!==void 0||ti.normal!==void 0||ti.color!==void 0)&&K.update(H,X,un),(ts||Et.receiveShadow!==H.receiveShadow)&&(Et.receiveShadow=H.receiveShadow,se.setValue(k,"receiveShadow",H.receiveShadow)),(z.isMeshStandardMaterial||z.isMeshLambertMaterial||z.isMeshPhongMaterial)&&z.envMap===null&&U.environment!==null&&(on.envMapIntensity.value=U.environmentIntensity),on.dfgLUT!==void 0&&(on.dfgLUT.value=pA()),ts){if(se.setValue(k,"toneMappingExposure",R.toneMappingExposure),Et.needsLights&&Ry(on,Ps),mt&&z.fog===!0&&lt.refreshFogUniforms(on,mt),lt.refreshMaterialUniforms(on,z,_t,It,A.state.transmissionRenderTarget[S.id]),Et.needsLights&&Et.numLightProbeGrids>0){let Ie=b,je=0;for(let Ci of A.state.lightProbeGridArray)Ci.texture!==null&&(Ie.textures[je]=Ci.texture,Ie.min[je]=Ci.boundingBox.min,Ie.max[je]=Ci.boundingBox.max,Ie.resolution[je]=Ci.resolution,je++);for(let Ci in Ie)Ie[Ci].length=je;on.probesSH.value=Ie.textures,on.probesMin.value=Ie.min,on.probesMax.value=Ie.max,on.probesResolution.value=Ie.resolution}co.upload(k,Xp(Et),on,Ht)}if(z.isShaderMaterial&&z.uniformsNeedUpdate===!0&&(co.upload(k,Xp(Et),on,Ht),z.uniformsNeedUpdate=!1),z.isSpriteMaterial&&se.setValue(k,"center",H.center),se.setValue(k,"modelViewMatrix",H.modelViewMatrix),se.setValue(k,"normalMatrix",H.normalMatrix),se.setValue(k,"modelMatrix",H.matrixWorld),z.uniformsGroups!==void 0){let Ie=z.uniformsGroups;for(let je=0,Ci=Ie.length;je<Ci;je++){let Zp=Ie[je];Rt.update(Zp,un),Rt.bind(Zp,un)}}return un}function Ry(S,U){S.ambientLightColor.needsUpdate=U,S.lightProbe.needsUpdate=U,S.sunLights.needsUpdate=U,S.sunLightShadows.needsUpdate=U,S.directionalLights.needsUpdate=U,S.directionalLightShadows.needsUpdate=U,S.pointLights.needsUpdate=U,S.pointLightShadows.needsUpdate=U,S.spotLights.needsUpdate=U,S.spotLightShadows.needsUpdate=U,S.rectAreaLights.needsUpdate=U,S.hemisphereLights.needsUpdate=U}function Py(S){return S.isMeshLambertMaterial||S.isMeshToonMaterial||S.isMeshPhongMaterial||S.isMeshStandardMaterial||S.isShadowMaterial||S.isShaderMaterial&&S.lights===!0}this.getActiveCubeFace=function(){return $},this.getActiveMipmapLevel=function(){return F},this.getRenderTarget=function(){return Q},this.setRenderTargetTextures=function(S,U,X){let z=kt.get(S);z.__autoAllocateDepthBuffer=S.resolveDepthBuffer===!1,z.__autoAllocateDepthBuffer===!1&&(z.__useRenderToTexture=!1),kt.get(S.texture).__webglTexture=U,kt.get(S.depthTexture).__webglTexture=z.__autoAllocateDepthBuffer?void 0:X,z.__hasExternalTextures=!0},this.setRenderTargetFramebuffer=function(S,U){let X=kt.get(S);X.__webglFramebuffer=U,X.__useDefaultFramebuffer=U===void 0},this.setRenderTarget=function(S,U=0,X=0){Q=S,$=U,F=X;let z=null,H=!1,mt=!1;if(S){let dt=kt.get(S);if(dt.__useDefaultFramebuffer!==void 0){vt.bindFramebuffer(k.FRAMEBUFFER,dt.__webglFramebuffer),et.copy(S.viewport),St.copy(S.scissor),Ot=S.scissorTest,vt.viewport(et),vt.scissor(St),vt.setScissorTest(Ot),G=-1;return}else if(dt.__webglFramebuffer===void 0)Ht.setupRenderTarget(S);else if(dt.__hasExternalTextures)Ht.rebindTextures(S,kt.get(S.texture).__webglTexture,kt.get(S.depthTexture).__webglTexture);else if(S.depthBuffer){let Wt=S.depthTexture;if(dt.__boundDepthTexture!==Wt){if(Wt!==null&&kt.has(Wt)&&(S.width!==Wt.image.width||S.height!==Wt.image.height))throw new Error("THREE.WebGLRenderer: Attached DepthTexture is initialized to the incorrect size.");Ht.setupDepthRenderbuffer(S)}}let bt=S.texture;(bt.isData3DTexture||bt.isDataArrayTexture||bt.isCompressedArrayTexture)&&(mt=!0);let Ct=kt.get(S).__webglFramebuffer;S.isWebGLCubeRenderTarget?(Array.isArray(Ct[U])?z=Ct[U][X]:z=Ct[U],H=!0):S.samples>0&&Ht.useMultisampledRTT(S)===!1?z=kt.get(S).__webglMultisampledFramebuffer:Array.isArray(Ct)?z=Ct[X]:z=Ct,et.copy(S.viewport),St.copy(S.scissor),Ot=S.scissorTest}else et.copy(Ut).multiplyScalar(_t).floor(),St.copy(ae).multiplyScalar(_t).floor(),Ot=he;if(X!==0&&(z=B),vt.bindFramebuffer(k.FRAMEBUFFER,z)&&vt.drawBuffers(S,z),vt.viewport(et),vt.scissor(St),vt.setScissorTest(Ot),H){let dt=kt.get(S.texture);k.framebufferTexture2D(k.FRAMEBUFFER,k.COLOR_ATTACHMENT0,k.TEXTURE_CUBE_MAP_POSITIVE_X+U,dt.__webglTexture,X)}else if(mt){let dt=U;for(let bt=0;bt<S.textures.length;bt++){let Ct=kt.get(S.textures[bt]);k.framebufferTextureLayer(k.FRAMEBUFFER,k.COLOR_ATTACHMENT0+bt,Ct.__webglTexture,X,dt)}}else if(S!==null&&X!==0){let dt=kt.get(S.texture);k.framebufferTexture2D(k.FRAMEBUFFER,k.COLOR_ATTACHMENT0,k.TEXTURE_2D,dt.__webglTexture,X)}G=-1};function Yp(S){let U=kt.get(S);return(U.__readFormat!==S.format||U.__readType!==S.type)&&(U.__readFormat=S.format,U.__readType=S.type,U.__formatReadable=Ae.textureFormatReadable(S.format),U.__typeReadable=Ae.textureTypeReadable(S.type)),U}this.readRenderTargetPixels=function(S,U,X,z,H,mt,Tt,dt=0){if(!(S&&S.isWebGLRenderTarget)){Bt("WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");return}let bt=kt.get(S).__webglFramebuffer;if(S.isWebGLCubeRenderTarget&&Tt!==void 0&&(bt=bt[Tt],Array.isArray(bt)&&(bt=bt[0])),bt){vt.bindFramebuffer(k.FRAMEBUFFER,bt);try{let Ct=S.textures[dt],Wt=Ct.format,te=Ct.type;S.textures.length>1&&k.readBuffer(k.COLOR_ATTACHMENT0+dt);let At=Yp(Ct);if(At.__formatReadable===!1){Bt("WebGLRenderer.readRenderTargetPixels: renderTarget is not in RGBA or implementation defined format.");return}if(At.__typeReadable===!1){Bt("WebGLRenderer.readRenderTargetPixels: renderTarget is not in UnsignedByteType or implementation defined type.");return}U>=0&&U<=S.width-z&&X>=0&&X<=S.height-H&&k.readPixels(U,X,z,H,ot.convert(Wt),ot.convert(te),mt)}finally{let Ct=Q!==null?kt.get(Q).__webglFramebuffer:null;vt.bindFramebuffer(k.FRAMEBUFFER,Ct)}}},this.readRenderTargetPixelsAsync=async function(S,U,X,z,H,mt,Tt,dt=0){if(!(S&&S.isWebGLRenderTarget))throw new Error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");let bt=kt.get(S).__webglFramebuffer;if(S.isWebGLCubeRenderTarget&&Tt!==void 0&&(bt=bt[Tt],Array.isArray(bt)&&(bt=bt[0])),bt)if(U>=0&&U<=S.width-z&&X>=0&&X<=S.height-H){vt.bindFramebuffer(k.FRAMEBUFFER,bt);let Ct=S.textures[dt],Wt=Ct.format,te=Ct.type;S.textures.length>1&&k.readBuffer(k.COLOR_ATTACHMENT0+dt);let At=Yp(Ct);if(At.__formatReadable===!1)throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in RGBA or implementation defined format.");if(At.__typeReadable===!1)throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in UnsignedByteType or implementation defined type.");let ee=k.createBuffer();k.bindBuffer(k.PIXEL_PACK_BUFFER,ee),k.bufferData(k.PIXEL_PACK_BUFFER,mt.byteLength,k.STREAM_READ),k.readPixels(U,X,z,H,ot.convert(Wt),ot.convert(te),0),k.bindBuffer(k.PIXEL_PACK_BUFFER,null);let ke=Q!==null?kt.get(Q).__webglFramebuffer:null;vt.bindFramebuffer(k.FRAMEBUFFER,ke);let ye=k.fenceSync(k.SYNC_GPU_COMMANDS_COMPLETE,0);return k.flush(),await J0(k,ye,4),k.bindBuffer(k.PIXEL_PACK_BUFFER,ee),k.getBufferSubData(k.PIXEL_PACK_BUFFER,0,mt),k.bindBuffer(k.PIXEL_PACK_BUFFER,null),k.deleteBuffer(ee),k.deleteSync(ye),mt}else throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: requested read bounds are out of range.")},this.copyFramebufferToTexture=function(S,U=null,X=0){let z=Math.pow(2,-X),H=Math.floor(S.image.width*z),mt=Math.floor(S.image.height*z),Tt=U!==null?U.x:0,dt=U!==null?U.y:0;Ht.setTexture2D(S,0),k.copyTexSubImage2D(k.TEXTURE_2D,X,0,0,Tt,dt,H,mt),vt.unbindTexture()},this.copyTextureToTexture=function(S,U,X=null,z=null,H=0,mt=0){let Tt,dt,bt,Ct,Wt,te,At,ee,ke,ye=S.isCompressedTexture?S.mipmaps[mt]:S.image;if(X!==null)Tt=X.max.x-X.min.x,dt=X.max.y-X.min.y,bt=X.isBox3?X.max.z-X.min.z:1,Ct=X.min.x,Wt=X.min.y,te=X.isBox3?X.min.z:0;else{let se=Math.pow(2,-H);Tt=Math.floor(ye.width*se),dt=Math.floor(ye.height*se),S.isDataArrayTexture?bt=ye.depth:S.isData3DTexture?bt=Math.floor(ye.depth*se):bt=1,Ct=0,Wt=0,te=0}z!==null?(At=z.x,ee=z.y,ke=z.z):(At=0,ee=0,ke=0);let _e=ot.convert(U.format),cn=ot.convert(U.type),Et;U.isData3DTexture?(Ht.setTexture3D(U,0),Et=k.TEXTURE_3D):U.isDataArrayTexture||U.isCompressedArrayTexture?(Ht.setTexture2DArray(U,0),Et=k.TEXTURE_2D_ARRAY):(Ht.setTexture2D(U,0),Et=k.TEXTURE_2D),vt.activeTexture(k.TEXTURE0),vt.pixelStorei(k.UNPACK_FLIP_Y_WEBGL,U.flipY),vt.pixelStorei(k.UNPACK_PREMULTIPLY_ALPHA_WEBGL,U.premultiplyAlpha),vt.pixelStorei(k.UNPACK_ALIGNMENT,U.unpackAlignment);let vn=vt.getParameter(k.UNPACK_ROW_LENGTH),le=vt.getParameter(k.UNPACK_IMAGE_HEIGHT),Rs=vt.getParameter(k.UNPACK_SKIP_PIXELS),un=vt.getParameter(k.UNPACK_SKIP_ROWS),gl=vt.getParameter(k.UNPACK_SKIP_IMAGES);vt.pixelStorei(k.UNPACK_ROW_LENGTH,ye.width),vt.pixelStorei(k.UNPACK_IMAGE_HEIGHT,ye.height),vt.pixelStorei(k.UNPACK_SKIP_PIXELS,Ct),vt.pixelStorei(k.UNPACK_SKIP_ROWS,Wt),vt.pixelStorei(k.UNPACK_SKIP_IMAGES,te);let ts=S.isDataArrayTexture||S.isData3DTexture,Ps=U.isDataArrayTexture||U.isData3DTexture;if(S.isDepthTexture){let se=kt.get(S),on=kt.get(U),ti=kt.get(se.__renderTarget),Ie=kt.get(on.__renderTarget);vt.bindFramebuffer(k.READ_FRAMEBUFFER,ti.__webglFramebuffer),vt.bindFramebuffer(k.DRAW_FRAMEBUFFER,Ie.__webglFramebuffer);for(let je=0;je<bt;je++)ts&&(k.framebufferTextureLayer(k.READ_FRAMEBUFFER,k.COLOR_ATTACHMENT0,kt.get(S).__webglTexture,H,te+je),k.framebufferTextureLayer(k.DRAW_FRAMEBUFFER,k.COLOR_ATTACHMENT0,kt.get(U).__webglTexture,mt,ke+je)),k.blitFramebuffer(Ct,Wt,Ct+Tt,Wt+dt,At,ee,At+Tt,ee+dt,k.DEPTH_BUFFER_BIT,k.NEAREST);vt.bindFramebuffer(k.READ_FRAMEBUFFER,null),vt.bindFramebuffer(k.DRAW_FRAMEBUFFER,null)}else if(H!==0||S.isRenderTargetTexture||kt.has(S)){let se=kt.get(S),on=kt.get(U);vt.bindFramebuffer(k.READ_FRAMEBUFFER,I),vt.bindFramebuffer(k.DRAW_FRAMEBUFFER,W);for(let ti=0;ti<bt;ti++)ts?k.framebufferTextureLayer(k.READ_FRAMEBUFFER,k.COLOR_ATTACHMENT0,se.__webglTexture,H,te+ti):k.framebufferTexture2D(k.READ_FRAMEBUFFER,k.COLOR_ATTACHMENT0,k.TEXTURE_2D,se.__webglTexture,H),Ps?k.framebufferTextureLayer(k.DRAW_FRAMEBUFFER,k.COLOR_ATTACHMENT0,on.__webglTexture,mt,ke+ti):k.framebufferTexture2D(k.DRAW_FRAMEBUFFER,k.COLOR_ATTACHMENT0,k.TEXTURE_2D,on.__webglTexture,mt),H!==0?k.blitFramebuffer(Ct,Wt,Ct+Tt,Wt+dt,At,ee,At+Tt,ee+dt,k.COLOR_BUFFER_BIT,k.NEAREST):Ps?k.copyTexSubImage3D(Et,mt,At,ee,ke+ti,Ct,Wt,Tt,dt):k.copyTexSubImage2D(Et,mt,At,ee,Ct,Wt,Tt,dt);vt.bindFramebuffer(k.READ_FRAMEBUFFER,null),vt.bindFramebuffer(k.DRAW_FRAMEBUFFER,null)}else Ps?S.isDataTexture||S.isData3DTexture?k.texSubImage3D(Et,mt,At,ee,ke,Tt,dt,bt,_e,cn,ye.data):U.isCompressedArrayTexture?k.compressedTexSubImage3D(Et,mt,At,ee,ke,Tt,dt,bt,_e,ye.data):k.texSubImage3D(Et,mt,At,ee,ke,Tt,dt,bt,_e,cn,ye):S.isDataTexture?k.texSubImage2D(k.TEXTURE_2D,mt,At,ee,Tt,dt,_e,cn,ye.data):S.isCompressedTexture?k.compressedTexSubImage2D(k.TEXTURE_2D,mt,At,ee,ye.width,ye.height,_e,ye.data):k.texSubImage2D(k.TEXTURE_2D,mt,At,ee,Tt,dt,_e,cn,ye);vt.pixelStorei(k.UNPACK_ROW_LENGTH,vn),vt.pixelStorei(k.UNPACK_IMAGE_HEIGHT,le),vt.pixelStorei(k.UNPACK_SKIP_PIXELS,Rs),vt.pixelStorei(k.UNPACK_SKIP_ROWS,un),vt.pixelStorei(k.UNPACK_SKIP_IMAGES,gl),mt===0&&U.generateMipmaps===!0&&U.mipmapsAutoUpdate===!0&&k.generateMipmap(Et),vt.unbindTexture()},this.initRenderTarget=function(S){kt.get(S).__webglFramebuffer===void 0&&Ht.setupRenderTarget(S)},this.initTexture=function(S){S.isCubeTexture?Ht.setTextureCube(S,0):S.isData3DTexture?Ht.setTexture3D(S,0):S.isDataArrayTexture||S.isCompressedArrayTexture?Ht.setTexture2DArray(S,0):Ht.setTexture2D(S,0),vt.unbindTexture()},this.resetState=function(){$=0,F=0,Q=null,vt.reset(),ct.reset()},typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}get coordinateSystem(){return Kn}get outputColorSpace(){return this._outputColorSpace}set outputColorSpace(t){this._outputColorSpace=t;let e=this.getContext();e.drawingBufferColorSpace=ne._getDrawingBufferColorSpace(t),e.unpackColorSpace=ne._getUnpackColorSpace()}};function Qf(n,t=!1){let e=n[0].index!==null,i=new Set(Object.keys(n[0].attributes)),s=new Set(Object.keys(n[0].morphAttributes)),r={},o={},a=n[0].morphTargetsRelative,l=new me;l.morphTargetsRelative=a;let u=0;for(let h=0;h<n.length;++h){let d=n[h],p=0,f=0;if(e!==(d.index!==null))return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+h+". All geometries must have compatible attributes; make sure index attribute exists among all geometries, or in none of them."),null;for(let g in d.attributes){if(!i.has(g))return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+h+'. All geometries must have compatible attributes; make sure "'+g+'" attribute exists among all geometries, or in none of them.'),null;r[g]===void 0&&(r[g]=[]),r[g].push(d.attributes[g]),p++}if(p!==i.size)return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+h+". Make sure all geometries have the same number of attributes."),null;if(a!==d.morphTargetsRelative)return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+h+". .morphTargetsRelative must be consistent throughout all geometries."),null;for(let g in d.morphAttributes){if(!s.has(g))return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+h+".  .morphAttributes must be consistent throughout all geometries."),null;if(d.morphAttributes[g].length!==n[0].morphAttributes[g].length)return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+h+'. All geometries must have the same number of morph targets for the "'+g+'" morph attribute.'),null;o[g]===void 0&&(o[g]=[]),o[g].push(d.morphAttributes[g]),f++}if(f!==s.size)return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+h+". Make sure all geometries have the same number of morph attributes."),null;if(t){let g;if(e)g=d.index.count;else if(d.attributes.position!==void 0)g=d.attributes.position.count;else return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+h+". The geometry must have either an index or a position attribute"),null;l.addGroup(u,g,h),u+=g}}if(e){let h=0,d=[];for(let p=0;p<n.length;++p){let f=n[p].index;for(let g=0;g<f.count;++g)d.push(f.getX(g)+h);h+=n[p].attributes.position.count}l.setIndex(d)}for(let h in r){let d=zv(r[h]);if(!d)return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed while trying to merge the "+h+" attribute."),null;l.setAttribute(h,d)}for(let h in o){let d=o[h][0].length;if(d!==0){l.morphAttributes=l.morphAttributes||{},l.morphAttributes[h]=[];for(let p=0;p<d;++p){let f=[];for(let _=0;_<o[h].length;++_)f.push(o[h][_][p]);let g=zv(f);if(!g)return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed while trying to merge the "+h+" morphAttribute."),null;l.morphAttributes[h].push(g)}}}return l}function zv(n){let t,e,i,s=-1,r=0;for(let u=0;u<n.length;++u){let h=n[u];if(t===void 0&&(t=h.array.constructor),t!==h.array.constructor)return console.error("THREE.BufferGeometryUtils: .mergeAttributes() failed. BufferAttribute.array must be of consistent array types across matching attributes."),null;if(e===void 0&&(e=h.itemSize),e!==h.itemSize)return console.error("THREE.BufferGeometryUtils: .mergeAttributes() failed. BufferAttribute.itemSize must be consistent across matching attributes."),null;if(i===void 0&&(i=h.normalized),i!==h.normalized)return console.error("THREE.BufferGeometryUtils: .mergeAttributes() failed. BufferAttribute.normalized must be consistent across matching attributes."),null;if(s===-1&&(s=h.gpuType),s!==h.gpuType)return console.error("THREE.BufferGeometryUtils: .mergeAttributes() failed. BufferAttribute.gpuType must be consistent across matching attributes."),null;r+=h.count*e}let o=new t(r),a=new $e(o,e,i),l=0;for(let u=0;u<n.length;++u){let h=n[u];if(h.isInterleavedBufferAttribute){let d=l/e;for(let p=0,f=h.count;p<f;p++)for(let g=0;g<e;g++){let _=h.getComponent(p,g);a.setComponent(p+d,g,_)}}else o.set(h.array,l);l+=h.count*e}return s!==void 0&&(a.gpuType=s),a}var tl=.016,Vv=.009,nr=.013,el=.07,Gv=12,tp=.3,mA=new N(0,1,0);function Hv({seat:n,wheel:t,half:e,knee:i,sole:s}){let r=[],o=[],a=i[0]-.06,l=n-.07,u=-.15,h=e-.14;r.push(new Cn(2*h,a-u,.05).translate(0,(a+u)/2,n-.025)),r.push(new Cn(2*h,.03,tp).translate(0,u,n+tp/2));for(let d of[-1,1]){let p=d*(e-.06),f=d*h;r.push(ep(t-tl,tl,p,0,t)),o.push(ep(t-.05,Vv,d*(e-Vv),0,t));for(let g=0;g<Gv;g++){let _=2*Math.PI*g/Gv,v=t-tl;o.push(Ki([p,0,t],[p,v*Math.cos(_),t+v*Math.sin(_)],.003))}o.push(Ki([f,0,t],[d*e,0,t],.02)),o.push(Ki([f,u,l],[f,a,l],nr)),o.push(Ki([f,u,l],[f,u,n+tp],nr)),o.push(Ki([f,0,t],[f,0,l],nr)),o.push(Ki([f,a,l],[d*.1,s[0]+.05,s[1]],nr)),o.push(Ki([f,a-.08,l],[f,a-.1,2*el],nr)),r.push(ep(el-tl,tl,f,a-.1,el)),o.push(Ki([f,a-.1,el],[f,a-.1,2*el],nr))}return o.push(Ki([-h,0,t],[h,0,t],nr)),r.push(new Cn(.3,.16,.015).translate(0,s[0]+.06,s[1]-.01)),{dark:Qf(r),bright:Qf(o)}}function ep(n,t,e,i,s){return new Na(n,t,6,28).rotateY(Math.PI/2).translate(e,i,s)}function Ki(n,t,e){let i=new N(...n),s=new N(...t).sub(i),r=s.length();return new qi(e,e,r,6,1).translate(0,r/2,0).applyQuaternion(new Xe().setFromUnitVectors(mA,s.normalize())).translate(i.x,i.y,i.z)}var rh=9,oh=9,gA=.505,ho=(n,t)=>n.stature*t,we=()=>[0,0,0];function Wv(n){let t=n.limb,e=(s,r)=>({from:we(),to:we(),r0:r,kind:s}),i=s=>({from:we(),to:we(),r0:s,kind:"legs"});return{limbs:[{from:we(),to:we(),r0:.052,kind:"skin"},e("cloth",t*.92),e("skin",t*.72),i(.078),i(.055),e("cloth",t*.92),e("skin",t*.72),i(.078),i(.055)],balls:[{at:we(),r:.001,kind:"legs"},{at:we(),r:t*1.15,kind:"cloth"},{at:we(),r:t*.86,kind:"cloth"},{at:we(),r:t*.95,kind:"skin"},{at:we(),r:.062,kind:"legs"},{at:we(),r:t*1.15,kind:"cloth"},{at:we(),r:t*.86,kind:"cloth"},{at:we(),r:t*.95,kind:"skin"},{at:we(),r:.062,kind:"legs"}],feet:[{at:we()},{at:we()}]}}var ji={shoulder:we(),elbow:we(),hip:we(),knee:we(),ankle:we(),hand:we(),neck:we(),chin:we()};function vA(n,t,e,i,s){let r=e*gA,o=e-r,a=[t[0]-n[0],t[1]-n[1],t[2]-n[2]],l=Math.max(Math.hypot(...a),1e-6),u=Math.min(Math.max(l,Math.abs(r-o)+1e-4),r+o-1e-4),h=(r*r-o*o+u*u)/(2*u),d=Math.sqrt(Math.max(r*r-h*h,0)),p=[a[0]/l,a[1]/l,a[2]/l],f=[.55*i,-.35,-.75],g=f[0]*p[0]+f[1]*p[1]+f[2]*p[2],_=[f[0]-g*p[0],f[1]-g*p[1],f[2]-g*p[2]],v=Math.hypot(..._)||1;for(let m=0;m<3;m++)s[m]=n[m]+p[m]*h+_[m]/v*d}function _A(n,t){return n.chair?[t*ho(n,.057),.7*n.chair.knee[0],n.chair.knee[1]+.12]:[t*(n.halfBreadth+.08),.08,n.shoulder-n.arm*.97]}function $v(n,t,e,i,s){let r=t.entry.body,o=(m,y)=>t.toStage(e,m,y),{angles:a}=e,{limbs:l,balls:u,feet:h}=n;Gs(r,a,[0,0,r.shoulder+.01],ji.neck),Rr(r,a,[0,.02,r.crown-ho(r,.115)],ji.chin),o(ji.neck,l[0].from),o(ji.chin,l[0].to),o([0,0,r.hips],u[0].at),t.stand(i+.05,s);let d=(s.x-e.x)/.05,p=(s.y-e.y)/.05,f=Math.hypot(d,p),g=Math.min(.3,f*.35),_=f>.001?[d/f,p/f,0]:[0,0,0],v=(e.x*_[0]+e.y*_[1])*4.2;zs.forEach((m,y)=>{let M=m==="right"?1:-1,b=1+4*y,E=Gs(r,a,[M*r.halfShoulder*.94,0,r.shoulder-r.limb],ji.shoulder),A=t.entry.props[m]!==void 0,x=A?e.bodyHand[m]:_A(r,M);if(A&&Cg(r,a,m,x).forEach((F,Q)=>E[Q]+=F),vA(E,x,r.arm,M,ji.elbow),o(E,l[b].from),o(ji.elbow,l[b].to),o(ji.elbow,l[b+1].from),o(x,l[b+1].to),o(E,u[b].at),o(ji.elbow,u[b+1].at),o(x,u[b+2].at),r.chair){let F=M*ho(r,.057),{knee:Q,sole:G}=r.chair;o([F,0,r.hips],l[b+2].from),o([F,...Q],l[b+2].to),o([F,...Q],l[b+3].from),o([F,...Q],u[b+3].at),o([F,G[0],G[1]+.08],l[b+3].to),o([F,G[0],G[1]+.08],h[y].at);return}let T=[M*ho(r,.052),0,ho(r,.505)],L=[M*ho(r,.085),-.02,.08];o(T,l[b+2].from);let R=l[b+3].to;o(L,R);let P=Math.sin(v+(y===0?0:Math.PI))*g,O=Math.max(0,Math.cos(v+(y===0?0:Math.PI)))*g*.35;R[0]+=_[0]*P,R[1]+=_[1]*P,R[2]+=O;let B=l[b+2].from,I=we();t.turn(e,[M*.1,1,0],I);let W=.035+.5*O+.2*Math.abs(P),$=[(B[0]+R[0])/2+I[0]*W,(B[1]+R[1])/2+I[1]*W,(B[2]+R[2])/2+.02];for(let F=0;F<3;F++)l[b+2].to[F]=$[F],l[b+3].from[F]=$[F],u[b+3].at[F]=$[F],h[y].at[F]=R[F]})}var np=[5210014,10124101,5081716,9724543,9210446,6121376,10116937,7305860];var Ti=64;function ip(n,t,e,i,s){for(let o=0;o<24;o++){let a=t(e+(i-e)*o/24),l=t(e+(i-e)*(o+1)/24);s((a[0]+l[0])/2,(a[1]+l[1])/2)&&n.push(new N(a[0],a[1],0),new N(l[0],l[1],0))}}function sp(n,t,e){let i=!1;for(let s=0,r=n.length-1;s<n.length;r=s++){let[o,a]=n[s],[l,u]=n[r];a>e!=u>e&&t<(l-o)*(e-a)/(u-a)+o&&(i=!i)}return i}function Xv(){let n=[[0,.47],[.6,.475],[.8,.5],[.82,.535],[.7,.6],[.72,.65],[.88,.72],[.97,.77],[.9,.805],[.6,.825],[.3,.838],[0,.84]],t=new Da(n.map(([e,i])=>new at(e,i)),11);return t.rotateX(Math.PI/2),t.scale(1,.068,1),t}function qv(){let n=new qs(1,18),t=n.getAttribute("position").count,e=new Float32Array(t*3);return e.fill(.17,0,3),n.setAttribute("color",new jt(e,3)),n}function nl(n,t,e){let s=[],r=[];for(let a=0;a<=48;a++){let l=2*Math.PI*a/48;for(let u of[n,t])s.push(u*Math.cos(l),u*Math.sin(l),0);if(a<48&&(e===0||Math.floor(a*e*2/48)%2===0)){let u=2*a;r.push(u,u+1,u+2,u+2,u+1,u+3)}}let o=new me;return o.setAttribute("position",new jt(s,3)),o.setIndex(r),o}function Yv(){let n=nl(.988,1,0),t=Array.from(n.getAttribute("position").array),e=Array.from(n.getIndex().array);for(let s=0;s<4;s++){let r=Math.PI/2*s+Math.PI/4,o=(l,u)=>[l*Math.cos(r+u),l*Math.sin(r+u),0],a=t.length/3;t.push(...o(.93,-.05),...o(1.06,-.05),...o(.994,.14)),e.push(a,a+1,a+2)}let i=new me;return i.setAttribute("position",new jt(t,3)),i.setIndex(e),i}function Zv(n){let t=new me,e=[];for(let i=0;i<n;i++)for(let s=0;s<Ti-1;s++){let r=(i*Ti+s)*2;e.push(r,r+1,r+2,r+2,r+1,r+3)}return t.setIndex(e),t.setAttribute("position",new $e(new Float32Array(n*Ti*6),3).setUsage(Ts)),t.setAttribute("color",new $e(new Float32Array(n*Ti*6),3).setUsage(Ts)),t}function Jv(){return new nn({vertexColors:!0,transparent:!0,blending:Ms,depthWrite:!1,side:pn})}function Kv(){return new Vn({vertexShader:`
      varying vec3 shade;
      void main() {
        mat3 turn = mat3(instanceMatrix);
        vec3 sizes = vec3(dot(turn[0], turn[0]), dot(turn[1], turn[1]), dot(turn[2], turn[2])) + 1e-9;
        vec3 n = normalize(turn * (normal / sizes));
        vec3 sky = mix(vec3(0.07, 0.05, 0.03), vec3(0.47, 0.52, 0.58), 0.5 + 0.5 * n.z);
        vec3 front = vec3(0.54, 0.48, 0.40) * max(0.0, dot(n, vec3(-0.315, -0.63, 0.709)));
        shade = instanceColor.rgb * (sky + front) * 1.3;
        gl_Position = projectionMatrix * modelViewMatrix * instanceMatrix * vec4(position, 1.0);
      }`,fragmentShader:`
      varying vec3 shade;
      void main() {
        gl_FragColor = vec4(shade, 1.0);
        #include <colorspace_fragment>
      }`})}function jv(){return new Vn({transparent:!0,depthWrite:!1,blending:Ms,uniforms:{scale:{value:720}},vertexShader:`
      attribute float size;
      uniform float scale;
      void main() {
        vec4 at = modelViewMatrix * vec4(position, 1.0);
        gl_Position = projectionMatrix * at;
        gl_PointSize = min(size * scale * projectionMatrix[1][1] * 0.5 / -at.z, 256.0);
        if (size <= 0.0) gl_Position = vec4(2.0, 2.0, 2.0, 1.0);
      }`,fragmentShader:`
      void main() {
        vec2 p = gl_PointCoord - 0.5;
        float r = length(p * vec2(1.15, 1.0 + 0.25 * step(0.0, -p.y))) * 2.0;
        float glow = pow(max(0.0, 1.0 - r), 2.2);
        vec3 fire = mix(vec3(1.0, 0.36, 0.05), vec3(1.0, 0.86, 0.52), glow);
        gl_FragColor = vec4(fire * glow, glow);
      }`})}var EA=new N(0,1,0),lh=class{constructor(t,e,i){this.doc=e;this.movers=i;let s=document.createElement("canvas").getContext("webgl2");if(!s)throw new Error("no WebGL");let r=s.getExtension("WEBGL_debug_renderer_info"),o=r?String(s.getParameter(r.UNMASKED_RENDERER_WEBGL)):"";s.getExtension("WEBGL_lose_context")?.loseContext(),this.software=/swiftshader|llvmpipe|software/i.test(o);let a=t.getContext("webgl2",{alpha:!1,antialias:!this.software,depth:!0,stencil:!1,powerPreference:"low-power"});if(!a)throw new Error("no WebGL");this.renderer=new nh({canvas:t,context:a}),this.renderer.setClearColor(790290),this.camera.up.set(0,0,1),this.poses=i.map(()=>Cd()),this.skeletons=i.map(E=>Wv(E.entry.body)),i.forEach((E,A)=>zs.forEach(x=>{let T=E.entry.props[x];T&&this.props.push({who:A,side:x,prop:T})})),this.scene.add(new ka(14674421,4864556,1.9));let l=new za(16773597,1.7);l.position.set(-4,-8,9),this.scene.add(l),this.build_place();let u=()=>Kv(),h=i.length,d=Math.max(this.props.length,1),p=E=>Math.max(this.props.reduce((A,{prop:x})=>A+E(x),0),1),f=p(E=>E.lines.length),g=p(E=>E.heads.length),_=(E,A,x=u())=>{let T=new ya(E,x,A);return T.instanceMatrix.setUsage(Ts),T.frustumCulled=!1,this.scene.add(T),T},v=new qi(.82,1,1,7,1,!0),m=new gs(1,8,5);this.limbs=_(v,h*rh),this.balls=_(m,h*oh),this.torsos=_(Xv(),h),this.skulls=_(new gs(1,11,8),h),this.hair=_(new gs(1,10,4,0,Math.PI*2,0,Math.PI*.5).rotateX(Math.PI/2).rotateX(.75),h),this.feet=_(new Cn(.085,.24,.07),h*2),i.forEach((E,A)=>{if(!E.entry.body.chair)return;let{dark:x,bright:T}=Hv(E.entry.body.chair);this.chairs.push({who:A,mesh:_(x,1),colour:3752523},{who:A,mesh:_(T,1),colour:10200494})}),this.tethers=_(new qi(1,1,1,4,1,!0),f,new nn),this.wicks=_(m,g,new nn),this.grips=_(new gs(1,6,4),d,new nn);let y=new nn({transparent:!0,opacity:.07,side:pn,depthWrite:!1});this.discs=_(new qs(1,32),d,y);let M=new nn({transparent:!0,opacity:.75,side:pn,depthWrite:!1});this.rings=_(Yv(),d,M),this.pools=_(qv(),g,new nn({transparent:!0,blending:Ms,depthWrite:!1,vertexColors:!0})),this.alerts=_(nl(.62,.7,12),h,new nn({color:16739159,side:pn,depthWrite:!1,transparent:!0})),this.followed=new Oe(nl(.46,.5,0),new nn({color:16777215,transparent:!0,opacity:.55,depthWrite:!1})),this.scene.add(this.followed,this.ways);let b=new me;b.setAttribute("position",new $e(new Float32Array(g*3),3).setUsage(Ts)),b.setAttribute("size",new $e(new Float32Array(g),1).setUsage(Ts)),this.flames=new xa(b,jv()),this.flames.frustumCulled=!1,this.trails=new Oe(Zv(p(E=>Jl(E).length)),Jv()),this.trails.frustumCulled=!1,this.scene.add(this.flames,this.trails),this.paint()}doc;movers;renderer;scene=new ma;camera=new xn(45,1,.05,300);poses;scratch=Cd();skeletons;limbs;balls;torsos;skulls;hair;feet;chairs=[];tethers;wicks;grips;discs;rings;pools;flames;trails;alerts;followed;ways=new vi;pins=new vi;tint=new Xt;walkShown=-2;props=[];software;size={width:1,height:1,lift:0};resize(t,e,i,s){this.size={width:t,height:e,lift:s},this.renderer.setPixelRatio(i),this.renderer.setSize(t,e,!1),this.camera.aspect=t/Math.max(e,1),this.camera.updateProjectionMatrix(),this.flames.material.uniforms.scale.value=e*i}paint(){let t=new Xt;this.movers.forEach((s,r)=>{let o=np[r%np.length],a=l=>l==="skin"?12168352:l==="cloth"?o:3883852;this.skeletons[r].limbs.forEach((l,u)=>this.limbs.setColorAt(r*rh+u,t.set(a(l.kind)))),this.skeletons[r].balls.forEach((l,u)=>this.balls.setColorAt(r*oh+u,t.set(a(l.kind)))),this.torsos.setColorAt(r,t.set(o)),this.skulls.setColorAt(r,t.set(12168352)),this.hair.setColorAt(r,t.set(2760988)),this.feet.setColorAt(2*r,t.set(2238253)),this.feet.setColorAt(2*r+1,t.set(2238253))});for(let s of this.chairs)s.mesh.setColorAt(0,t.set(s.colour));let e=0,i=0;this.props.forEach(({side:s,prop:r},o)=>{t.set(s==="left"?5682409:16754224);for(let a of[this.grips,this.discs,this.rings])a.setColorAt(o,t);r.lines.forEach(()=>this.tethers.setColorAt(e++,t)),r.heads.forEach(()=>this.wicks.setColorAt(i++,t))});for(let s=0;s<Math.max(i,1);s++)this.pools.setColorAt(s,t.set(16751164))}place(t){this.movers.forEach((e,i)=>e.at(t,this.poses[i]))}draw(t){let e=new oe,i=new Xe,s=new N,r=new N,o=new N,a=new oe().makeScale(0,0,0),l=(L,R,P,O,B)=>{s.set(...P),r.set(...O).sub(s);let I=Math.max(r.length(),1e-6);i.setFromUnitVectors(EA,o.copy(r).divideScalar(I)),s.addScaledVector(r,.5),L.setMatrixAt(R,e.compose(s,i,o.set(B,I,B)))},u=new Xe,h=(L,R,P,O)=>L.setMatrixAt(R,e.compose(s.set(...P),u,o.set(O,O,O))),d=new Xe,p=new N(0,0,1),f=[0,0,0],g=L=>(e.set(L[0],L[1],L[2],0,L[3],L[4],L[5],0,L[6],L[7],L[8],0,0,0,0,1),i.setFromRotationMatrix(e).premultiply(d));this.movers.forEach((L,R)=>{let P=this.poses[R],O=this.skeletons[R],B=L.entry.body,I=t.shown[R],W=t.hideBody===R;I&&$v(O,L,P,t.beat,this.scratch),O.limbs.forEach(($,F)=>{let Q=R*rh+F;!I||W&&F===0?this.limbs.setMatrixAt(Q,a):l(this.limbs,Q,$.from,$.to,$.r0)}),O.balls.forEach(($,F)=>{let Q=R*oh+F;!I||W&&(F===0||F===1||F===5)?this.balls.setMatrixAt(Q,a):h(this.balls,Q,$.at,$.r)}),d.setFromAxisAngle(p,Math.atan2(P.sin,P.cos)+Math.PI),!I||W?(this.torsos.setMatrixAt(R,a),this.skulls.setMatrixAt(R,a),this.hair.setMatrixAt(R,a)):(L.toStage(P,Gs(B,P.angles,[0,0,B.crown-B.stature],f),f),this.torsos.setMatrixAt(R,e.compose(s.set(...f),g(Vs(P.angles)),o.set(B.halfShoulder,B.stature,B.stature))),L.toStage(P,Rr(B,P.angles,[0,0,B.crown-B.stature*.065],f),f),g(Eg(P.angles)),this.skulls.setMatrixAt(R,e.compose(s.set(...f),i,o.set(.077,.095,B.stature*.066))),this.hair.setMatrixAt(R,e.compose(s,i,o.set(.083,.101,B.stature*.0705)))),O.feet.forEach(($,F)=>{I?this.feet.setMatrixAt(2*R+F,e.compose(s.set($.at[0]- -P.sin*-.05,$.at[1]-P.cos*.05,$.at[2]-.045),d,o.set(1,1,1))):this.feet.setMatrixAt(2*R+F,a)}),I&&t.alert[R]?this.alerts.setMatrixAt(R,e.compose(s.set(P.x,P.y,.012),u,o.set(1,1,1))):this.alerts.setMatrixAt(R,a)});for(let{who:L,mesh:R}of this.chairs){let P=this.poses[L];d.setFromAxisAngle(p,Math.atan2(P.sin,P.cos)+Math.PI),R.setMatrixAt(0,t.shown[L]?e.compose(s.set(P.x,P.y,0),d,o.set(1,1,1)):a),R.instanceMatrix.needsUpdate=!0}let _=this.poses[t.follow];this.followed.visible=_!==void 0&&t.shown[t.follow]&&this.movers.length>1,_&&this.followed.position.set(_.x,_.y,.01);let v=this.flames.geometry.getAttribute("position"),m=this.flames.geometry.getAttribute("size"),y=t.beat,M=0,b=0,E=0,A=0,x=[0,0,0],T=[0,0,0];this.props.forEach(({who:L,side:R,prop:P},O)=>{let B=t.shown[L],I=this.poses[L],W=B&&t.lit[L];if(!B){P.lines.forEach(()=>this.tethers.setMatrixAt(E++,a)),P.heads.forEach(()=>{m.setX(A,0),this.wicks.setMatrixAt(A++,a)}),this.grips.setMatrixAt(O,a);return}for(let[F,Q,G,tt]of P.lines)l(this.tethers,E++,Zl(I,R,[F,Q],x),Zl(I,R,[G,tt],T),.009);h(this.grips,O,I.hand[R],.034);let $=Jl(P).length;if(P.heads.forEach((F,Q)=>{let G=Zl(I,R,F,T);h(this.wicks,A,G,P.wick),v.setXYZ(A,G[0],G[1],G[2]+(W?P.flame*.12:0));let tt=1+.05*Math.sin(23*y+5*A)+.03*Math.sin(41*y+A);m.setX(A++,W?(P.wick+P.flame)*1.5*tt:0),W&&Q<$&&this.pools.setMatrixAt(b++,e.compose(s.set(G[0],G[1],.006),u,o.setScalar(.5+.35*G[2])))}),t.planes&&(this.movers.length<=4||L===t.follow)){i.setFromUnitVectors(p,r.set(...I.plane[R])),e.compose(s.set(...I.hand[R]),i,o.setScalar(P.length)),this.discs.setMatrixAt(M,t.hideBody===L?a:e),this.rings.setMatrixAt(M,e);let F=this.tint.set(R==="left"?5682409:16754224);this.discs.setColorAt(M,F),this.rings.setColorAt(M++,F)}}),this.discs.count=this.rings.count=M,this.pools.count=b,this.discs.instanceColor&&(this.discs.instanceColor.needsUpdate=!0),this.rings.instanceColor&&(this.rings.instanceColor.needsUpdate=!0),v.needsUpdate=!0,m.needsUpdate=!0;for(let L of[this.limbs,this.balls,this.torsos,this.skulls,this.hair,this.feet,this.tethers,this.wicks,this.grips,this.discs,this.rings,this.pools,this.alerts])L.instanceMatrix.needsUpdate=!0;for(let L of this.pins.children)L.visible=t.front===null||L.position.y>t.front;this.drawTrails(t),this.drawWays(t),this.renderer.render(this.scene,this.camera)}drawTrails(t){let e=this.trails.geometry,i=e.getAttribute("position"),s=e.getAttribute("color"),r=this.camera.position,o=[0,0,0],a=[0,0,0],l=i.array,u=s.array;if(this.trails.visible=t.trail>0,t.trail<=0)return;let h=0,d=this.props.flatMap(({who:p,side:f,prop:g})=>Jl(g).map(_=>({who:p,side:f,spot:_})));for(let{who:p,side:f,spot:g}of d){if(!t.shown[p]){l.fill(0,h,h+Ti*6),h+=Ti*6;continue}let _=t.lit[p],v=f==="left"?5682409:16754224,m=(v>>16&255)/255,y=(v>>8&255)/255,M=(v&255)/255;for(let b=0;b<Ti;b++,h+=6){let E=b/(Ti-1);this.movers[p].headAt(t.beat-E*t.trail,f,this.scratch,o,g),b===0&&this.movers[p].headAt(t.beat+t.trail/Ti,f,this.scratch,a,g);let A=a[0]-o[0],x=a[1]-o[1],T=a[2]-o[2],L=r.x-o[0],R=r.y-o[1],P=r.z-o[2],O=x*P-T*R,B=T*L-A*P,I=A*R-x*L,W=Math.hypot(O,B,I)||1,$=(_?.04:.026)*(1-.75*E)*(t.hideBody===p?.45:1);O*=$/W,B*=$/W,I*=$/W,l[h]=o[0]+O,l[h+1]=o[1]+B,l[h+2]=o[2]+I,l[h+3]=o[0]-O,l[h+4]=o[1]-B,l[h+5]=o[2]-I;let F=Math.pow(1-E,1.4)*(_?.95:.7),Q=_?Math.pow(1-E,12)*.55:0;for(let G of[h,h+3])u[G]=Math.min(1,m*F+Q),u[G+1]=Math.min(1,y*F+Q*.85),u[G+2]=Math.min(1,M*F+Q*.5);a[0]=o[0],a[1]=o[1],a[2]=o[2]}}i.needsUpdate=!0,s.needsUpdate=!0}drawWays(t){if(t.walk===this.walkShown)return;this.walkShown=t.walk,this.ways.clear();let e=this.doc.standings[t.walk];if(!e)return;let i=new bi({color:9148579,transparent:!0,opacity:.8}),s=new nn({color:9148579,transparent:!0,opacity:.6,depthWrite:!1});for(let[r,o,a]of e.spots){let l=new Oe(nl(.24,.28,0),s);l.position.set(o,a,.008),this.ways.add(l);let u=[];for(let h=0;h<=48;h++){let d=e.walk+(e.start-e.walk)*h/48;this.movers[r].stand(d,this.scratch),u.push(new N(this.scratch.x,this.scratch.y,.01))}u[0].distanceTo(u[48])>.05&&this.ways.add(new Qr(new me().setFromPoints(u.slice(0,48)),i))}}build_place(){let t=this.doc.place,e=t.outline.map(([r,o])=>new at(r,o));if(e.length>2){let r=new ms(e);for(let m of t.holes)r.holes.push(new ms(m.map(([y,M])=>new at(y,M))));let o=new Oe(new no(r),new nn({color:1514529}));o.position.z=-.004,this.scene.add(o);for(let m of[t.outline,...t.holes]){let y=[...m,m[0]].map(([M,b])=>new N(M,b,.003));this.scene.add(new ps(new me().setFromPoints(y),new bi({color:9148579})))}let a=e.map(m=>m.x),l=e.map(m=>m.y),u=[],[h,d,p,f]=[Math.min(...a),Math.max(...a),Math.min(...l),Math.max(...l)],g=Math.max(1,Math.ceil(Math.max(d-h,f-p)/40)),_=(m,y)=>sp(t.outline,m,y)&&!t.holes.some(M=>sp(M,m,y));for(let m=Math.ceil(h/g)*g;m<=d;m+=g)ip(u,y=>[m,y],p,f,_);for(let m=Math.ceil(p/g)*g;m<=f;m+=g)ip(u,y=>[y,m],h,d,_);this.scene.add(new Qr(new me().setFromPoints(u),new bi({color:2765370})));let v=[new N(0,p,.002),new N(0,f,.002)];this.scene.add(new ps(new me().setFromPoints(v),new bi({color:4608605})))}for(let r of t.audience)for(let o=1;o<r.line.length;o++){let[a,l]=r.line[o-1],[u,h]=r.line[o],d=new Oe(new Cn(Math.hypot(u-a,h-l),.1,.02),new nn({color:14279143}));d.position.set((a+u)/2,(l+h)/2,0),d.rotation.z=Math.atan2(h-l,u-a),this.scene.add(d)}for(let r of t.scenery){let o=new ms(r.outline.map(([u,h])=>new at(u,h))),a=new Oe(new no(o),new Zs({color:4866104}));a.position.z=r.height,this.scene.add(a);let l=[...r.outline,r.outline[0]];for(let u=1;u<l.length;u++){let[h,d]=l[u-1],[p,f]=l[u],g=new Oe(new Cn(Math.hypot(p-h,f-d),.01,r.height),new Zs({color:4866104}));g.position.set((h+p)/2,(d+f)/2,r.height/2),g.rotation.z=Math.atan2(f-d,p-h),this.scene.add(g)}}let i=new bi({color:9148579,transparent:!0,opacity:.7});for(let{points:r}of t.lines){let o=r.map(([a,l])=>new N(a,l,.004));o.length>1&&this.scene.add(new ps(new me().setFromPoints(o),i))}let s=(r,o,a,l)=>{let u=new Oe(new qi(.05,.16,l,10),new Zs({color:a}));u.rotation.x=Math.PI/2,u.position.set(r,o,l/2),this.pins.add(u)};this.scene.add(this.pins);for(let r of this.doc.crew)s(r.at[0],r.at[1],9425076,1.2);for(let[r,o]of t.extinguishers)s(r,o,13649979,.6);for(let r of t.exits)s(r.at[0],r.at[1],10475775,.25);t.fuel&&s(t.fuel[0],t.fuel[1],14205530,.6)}};var t_={type:"change"},lp={type:"start"},n_={type:"end"},ch=new ds,e_=new Fn,CA=Math.cos(70*ju.DEG2RAD),Ze=new N,Pn=2*Math.PI,ue={NONE:-1,ROTATE:0,DOLLY:1,PAN:2,TOUCH_ROTATE:3,TOUCH_PAN:4,TOUCH_DOLLY_PAN:5,TOUCH_DOLLY_ROTATE:6},ap=1e-6,uh=class extends Va{constructor(t,e=null){super(t,e),this.state=ue.NONE,this.target=new N,this.cursor=new N,this.minDistance=0,this.maxDistance=1/0,this.minZoom=0,this.maxZoom=1/0,this.minTargetRadius=0,this.maxTargetRadius=1/0,this.minPolarAngle=0,this.maxPolarAngle=Math.PI,this.minAzimuthAngle=-1/0,this.maxAzimuthAngle=1/0,this.enableDamping=!1,this.dampingFactor=.05,this.enableZoom=!0,this.zoomSpeed=1,this.enableRotate=!0,this.rotateSpeed=1,this.keyRotateSpeed=1,this.enablePan=!0,this.panSpeed=1,this.screenSpacePanning=!0,this.keyPanSpeed=7,this.zoomToCursor=!1,this.autoRotate=!1,this.autoRotateSpeed=2,this.keys={LEFT:"ArrowLeft",UP:"ArrowUp",RIGHT:"ArrowRight",BOTTOM:"ArrowDown"},this.mouseButtons={LEFT:xs.ROTATE,MIDDLE:xs.DOLLY,RIGHT:xs.PAN},this.touches={ONE:bs.ROTATE,TWO:bs.DOLLY_PAN},this.target0=this.target.clone(),this.position0=this.object.position.clone(),this.zoom0=this.object.zoom,this._cursorStyle="auto",this._domElementKeyEvents=null,this._lastPosition=new N,this._lastQuaternion=new Xe,this._lastTargetPosition=new N,this._quat=new Xe().setFromUnitVectors(t.up,new N(0,1,0)),this._quatInverse=this._quat.clone().invert(),this._spherical=new so,this._sphericalDelta=new so,this._scale=1,this._panOffset=new N,this._rotateStart=new at,this._rotateEnd=new at,this._rotateDelta=new at,this._panStart=new at,this._panEnd=new at,this._panDelta=new at,this._dollyStart=new at,this._dollyEnd=new at,this._dollyDelta=new at,this._dollyDirection=new N,this._mouse=new at,this._performCursorZoom=!1,this._pointers=[],this._pointerPositions={},this._controlActive=!1,this._onPointerMove=PA.bind(this),this._onPointerDown=RA.bind(this),this._onPointerUp=IA.bind(this),this._onContextMenu=FA.bind(this),this._onMouseWheel=NA.bind(this),this._onKeyDown=UA.bind(this),this._onTouchStart=OA.bind(this),this._onTouchMove=kA.bind(this),this._onMouseDown=DA.bind(this),this._onMouseMove=LA.bind(this),this._interceptControlDown=BA.bind(this),this._interceptControlUp=zA.bind(this),this.domElement!==null&&this.connect(this.domElement),this.update()}set cursorStyle(t){this._cursorStyle=t,t==="grab"?this.domElement.style.cursor="grab":this.domElement.style.cursor="auto"}get cursorStyle(){return this._cursorStyle}connect(t){super.connect(t),this.domElement.addEventListener("pointerdown",this._onPointerDown),this.domElement.addEventListener("pointercancel",this._onPointerUp),this.domElement.addEventListener("contextmenu",this._onContextMenu),this.domElement.addEventListener("wheel",this._onMouseWheel,{passive:!1}),this.domElement.ownerDocument.addEventListener("keydown",this._interceptControlDown,{passive:!0,capture:!0}),this.domElement.style.touchAction="none"}disconnect(){this.state=ue.NONE,this.domElement.removeEventListener("pointerdown",this._onPointerDown),this.domElement.ownerDocument.removeEventListener("pointermove",this._onPointerMove),this.domElement.ownerDocument.removeEventListener("pointerup",this._onPointerUp),this.domElement.removeEventListener("pointercancel",this._onPointerUp),this.domElement.removeEventListener("wheel",this._onMouseWheel),this.domElement.removeEventListener("contextmenu",this._onContextMenu),this.stopListenToKeyEvents(),this.domElement.ownerDocument.removeEventListener("keydown",this._interceptControlDown,{capture:!0}),this.domElement.ownerDocument.removeEventListener("keyup",this._interceptControlUp,{capture:!0}),this._controlActive=!1,this._pointers.length=0,this._pointerPositions={},this.domElement.style.touchAction="",this.domElement.style.cursor="auto"}dispose(){this.disconnect()}getPolarAngle(){return this._spherical.phi}getAzimuthalAngle(){return this._spherical.theta}getDistance(){return this.object.position.distanceTo(this.target)}listenToKeyEvents(t){t.addEventListener("keydown",this._onKeyDown),this._domElementKeyEvents=t}stopListenToKeyEvents(){this._domElementKeyEvents!==null&&(this._domElementKeyEvents.removeEventListener("keydown",this._onKeyDown),this._domElementKeyEvents=null)}saveState(){this.target0.copy(this.target),this.position0.copy(this.object.position),this.zoom0=this.object.zoom}reset(){this.target.copy(this.target0),this.object.position.copy(this.position0),this.object.zoom=this.zoom0,this.object.updateProjectionMatrix(),this.dispatchEvent(t_),this.update(),this.state=ue.NONE}pan(t,e){this._pan(t,e),this.update()}dollyIn(t){this._dollyIn(t),this.update()}dollyOut(t){this._dollyOut(t),this.update()}rotateLeft(t){this._rotateLeft(t),this.update()}rotateUp(t){this._rotateUp(t),this.update()}update(t=null){let e=this.object.position;Ze.copy(e).sub(this.target),Ze.applyQuaternion(this._quat),this._spherical.setFromVector3(Ze),this.autoRotate&&this.state===ue.NONE&&this._rotateLeft(this._getAutoRotationAngle(t)),this.enableDamping?(this._spherical.theta+=this._sphericalDelta.theta*this.dampingFactor,this._spherical.phi+=this._sphericalDelta.phi*this.dampingFactor):(this._spherical.theta+=this._sphericalDelta.theta,this._spherical.phi+=this._sphericalDelta.phi);let i=this.minAzimuthAngle,s=this.maxAzimuthAngle;isFinite(i)&&isFinite(s)&&(i<-Math.PI?i+=Pn:i>Math.PI&&(i-=Pn),s<-Math.PI?s+=Pn:s>Math.PI&&(s-=Pn),i<=s?this._spherical.theta=Math.max(i,Math.min(s,this._spherical.theta)):this._spherical.theta=this._spherical.theta>(i+s)/2?Math.max(i,this._spherical.theta):Math.min(s,this._spherical.theta)),this._spherical.phi=Math.max(this.minPolarAngle,Math.min(this.maxPolarAngle,this._spherical.phi)),this._spherical.makeSafe(),this.enableDamping===!0?this.target.addScaledVector(this._panOffset,this.dampingFactor):this.target.add(this._panOffset),this.target.sub(this.cursor),this.target.clampLength(this.minTargetRadius,this.maxTargetRadius),this.target.add(this.cursor);let r=!1;if(this.zoomToCursor&&this._performCursorZoom||this.object.isOrthographicCamera)this._spherical.radius=this._clampDistance(this._spherical.radius);else{let o=this._spherical.radius;this._spherical.radius=this._clampDistance(this._spherical.radius*this._scale),r=o!=this._spherical.radius}if(Ze.setFromSpherical(this._spherical),Ze.applyQuaternion(this._quatInverse),e.copy(this.target).add(Ze),this.object.lookAt(this.target),this.enableDamping===!0?(this._sphericalDelta.theta*=1-this.dampingFactor,this._sphericalDelta.phi*=1-this.dampingFactor,this._panOffset.multiplyScalar(1-this.dampingFactor)):(this._sphericalDelta.set(0,0,0),this._panOffset.set(0,0,0)),this.zoomToCursor&&this._performCursorZoom){let o=null;if(this.object.isPerspectiveCamera){let a=Ze.length();o=this._clampDistance(a*this._scale);let l=a-o;this.object.position.addScaledVector(this._dollyDirection,l),this.object.updateMatrixWorld(),r=!!l}else if(this.object.isOrthographicCamera){let a=new N(this._mouse.x,this._mouse.y,0);a.unproject(this.object);let l=this.object.zoom;this.object.zoom=Math.max(this.minZoom,Math.min(this.maxZoom,this.object.zoom/this._scale)),this.object.updateProjectionMatrix(),r=l!==this.object.zoom;let u=new N(this._mouse.x,this._mouse.y,0);u.unproject(this.object),this.object.position.sub(u).add(a),this.object.updateMatrixWorld(),o=Ze.length()}else console.warn("WARNING: OrbitControls.js encountered an unknown camera type - zoom to cursor disabled."),this.zoomToCursor=!1;o!==null&&(this.screenSpacePanning?this.target.set(0,0,-1).transformDirection(this.object.matrix).multiplyScalar(o).add(this.object.position):(ch.origin.copy(this.object.position),ch.direction.set(0,0,-1).transformDirection(this.object.matrix),Math.abs(this.object.up.dot(ch.direction))<CA?this.object.lookAt(this.target):(e_.setFromNormalAndCoplanarPoint(this.object.up,this.target),ch.intersectPlane(e_,this.target))))}else if(this.object.isOrthographicCamera){let o=this.object.zoom;this.object.zoom=Math.max(this.minZoom,Math.min(this.maxZoom,this.object.zoom/this._scale)),o!==this.object.zoom&&(this.object.updateProjectionMatrix(),r=!0)}return this._scale=1,this._performCursorZoom=!1,r||this._lastPosition.distanceToSquared(this.object.position)>ap||8*(1-this._lastQuaternion.dot(this.object.quaternion))>ap||this._lastTargetPosition.distanceToSquared(this.target)>ap?(this.dispatchEvent(t_),this._lastPosition.copy(this.object.position),this._lastQuaternion.copy(this.object.quaternion),this._lastTargetPosition.copy(this.target),!0):!1}_getAutoRotationAngle(t){return t!==null?Pn/60*this.autoRotateSpeed*t:Pn/60/60*this.autoRotateSpeed}_getZoomScale(t){let e=Math.abs(t*.01);return Math.pow(.95,this.zoomSpeed*e)}_rotateLeft(t){this._sphericalDelta.theta-=t}_rotateUp(t){this._sphericalDelta.phi-=t}_panLeft(t,e){Ze.setFromMatrixColumn(e,0),Ze.multiplyScalar(-t),this._panOffset.add(Ze)}_panUp(t,e){this.screenSpacePanning===!0?Ze.setFromMatrixColumn(e,1):(Ze.setFromMatrixColumn(e,0),Ze.crossVectors(this.object.up,Ze)),Ze.multiplyScalar(t),this._panOffset.add(Ze)}_pan(t,e){let i=this.domElement;if(this.object.isPerspectiveCamera){let s=this.object.position;Ze.copy(s).sub(this.target);let r=Ze.length();r*=Math.tan(this.object.fov/2*Math.PI/180),this._panLeft(2*t*r/i.clientHeight,this.object.matrix),this._panUp(2*e*r/i.clientHeight,this.object.matrix)}else this.object.isOrthographicCamera?(this._panLeft(t*(this.object.right-this.object.left)/this.object.zoom/i.clientWidth,this.object.matrix),this._panUp(e*(this.object.top-this.object.bottom)/this.object.zoom/i.clientHeight,this.object.matrix)):(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - pan disabled."),this.enablePan=!1)}_dollyOut(t){this.object.isPerspectiveCamera||this.object.isOrthographicCamera?this._scale/=t:(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - dolly/zoom disabled."),this.enableZoom=!1)}_dollyIn(t){this.object.isPerspectiveCamera||this.object.isOrthographicCamera?this._scale*=t:(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - dolly/zoom disabled."),this.enableZoom=!1)}_updateZoomParameters(t,e){if(!this.zoomToCursor)return;this._performCursorZoom=!0;let i=this.domElement.getBoundingClientRect(),s=t-i.left,r=e-i.top,o=i.width,a=i.height;this._mouse.x=s/o*2-1,this._mouse.y=-(r/a)*2+1,this._dollyDirection.set(this._mouse.x,this._mouse.y,1).unproject(this.object).sub(this.object.position).normalize()}_clampDistance(t){return Math.max(this.minDistance,Math.min(this.maxDistance,t))}_handleMouseDownRotate(t){this._rotateStart.set(t.clientX,t.clientY)}_handleMouseDownDolly(t){this._updateZoomParameters(t.clientX,t.clientY),this._dollyStart.set(t.clientX,t.clientY)}_handleMouseDownPan(t){this._panStart.set(t.clientX,t.clientY)}_handleMouseMoveRotate(t){this._rotateEnd.set(t.clientX,t.clientY),this._rotateDelta.subVectors(this._rotateEnd,this._rotateStart).multiplyScalar(this.rotateSpeed);let e=this.domElement;this._rotateLeft(Pn*this._rotateDelta.x/e.clientHeight),this._rotateUp(Pn*this._rotateDelta.y/e.clientHeight),this._rotateStart.copy(this._rotateEnd),this.update()}_handleMouseMoveDolly(t){this._dollyEnd.set(t.clientX,t.clientY),this._dollyDelta.subVectors(this._dollyEnd,this._dollyStart),this._dollyDelta.y>0?this._dollyOut(this._getZoomScale(this._dollyDelta.y)):this._dollyDelta.y<0&&this._dollyIn(this._getZoomScale(this._dollyDelta.y)),this._dollyStart.copy(this._dollyEnd),this.zoomToCursor&&(this._performCursorZoom=!0,this._dollyDirection.set(this._mouse.x,this._mouse.y,1).unproject(this.object).sub(this.object.position).normalize()),this.update()}_handleMouseMovePan(t){this._panEnd.set(t.clientX,t.clientY),this._panDelta.subVectors(this._panEnd,this._panStart).multiplyScalar(this.panSpeed),this._pan(this._panDelta.x,this._panDelta.y),this._panStart.copy(this._panEnd),this.update()}_handleMouseWheel(t){this._updateZoomParameters(t.clientX,t.clientY),t.deltaY<0?this._dollyIn(this._getZoomScale(t.deltaY)):t.deltaY>0&&this._dollyOut(this._getZoomScale(t.deltaY)),this.update()}_handleKeyDown(t){let e=!1;switch(t.code){case this.keys.UP:t.ctrlKey||t.metaKey||t.shiftKey?this.enableRotate&&this._rotateUp(Pn*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(0,this.keyPanSpeed),e=!0;break;case this.keys.BOTTOM:t.ctrlKey||t.metaKey||t.shiftKey?this.enableRotate&&this._rotateUp(-Pn*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(0,-this.keyPanSpeed),e=!0;break;case this.keys.LEFT:t.ctrlKey||t.metaKey||t.shiftKey?this.enableRotate&&this._rotateLeft(Pn*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(this.keyPanSpeed,0),e=!0;break;case this.keys.RIGHT:t.ctrlKey||t.metaKey||t.shiftKey?this.enableRotate&&this._rotateLeft(-Pn*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(-this.keyPanSpeed,0),e=!0;break}e&&(t.preventDefault(),this.update())}_handleTouchStartRotate(t){if(this._pointers.length===1)this._rotateStart.set(t.pageX,t.pageY);else{let e=this._getSecondPointerPosition(t),i=.5*(t.pageX+e.x),s=.5*(t.pageY+e.y);this._rotateStart.set(i,s)}}_handleTouchStartPan(t){if(this._pointers.length===1)this._panStart.set(t.pageX,t.pageY);else{let e=this._getSecondPointerPosition(t),i=.5*(t.pageX+e.x),s=.5*(t.pageY+e.y);this._panStart.set(i,s)}}_handleTouchStartDolly(t){let e=this._getSecondPointerPosition(t),i=t.pageX-e.x,s=t.pageY-e.y,r=Math.sqrt(i*i+s*s);this._dollyStart.set(0,r)}_handleTouchStartDollyPan(t){this.enableZoom&&this._handleTouchStartDolly(t),this.enablePan&&this._handleTouchStartPan(t)}_handleTouchStartDollyRotate(t){this.enableZoom&&this._handleTouchStartDolly(t),this.enableRotate&&this._handleTouchStartRotate(t)}_handleTouchMoveRotate(t){if(this._pointers.length==1)this._rotateEnd.set(t.pageX,t.pageY);else{let i=this._getSecondPointerPosition(t),s=.5*(t.pageX+i.x),r=.5*(t.pageY+i.y);this._rotateEnd.set(s,r)}this._rotateDelta.subVectors(this._rotateEnd,this._rotateStart).multiplyScalar(this.rotateSpeed);let e=this.domElement;this._rotateLeft(Pn*this._rotateDelta.x/e.clientHeight),this._rotateUp(Pn*this._rotateDelta.y/e.clientHeight),this._rotateStart.copy(this._rotateEnd)}_handleTouchMovePan(t){if(this._pointers.length===1)this._panEnd.set(t.pageX,t.pageY);else{let e=this._getSecondPointerPosition(t),i=.5*(t.pageX+e.x),s=.5*(t.pageY+e.y);this._panEnd.set(i,s)}this._panDelta.subVectors(this._panEnd,this._panStart).multiplyScalar(this.panSpeed),this._pan(this._panDelta.x,this._panDelta.y),this._panStart.copy(this._panEnd)}_handleTouchMoveDolly(t){let e=this._getSecondPointerPosition(t),i=t.pageX-e.x,s=t.pageY-e.y,r=Math.sqrt(i*i+s*s);this._dollyEnd.set(0,r),this._dollyDelta.set(0,Math.pow(this._dollyEnd.y/this._dollyStart.y,this.zoomSpeed)),this._dollyOut(this._dollyDelta.y),this._dollyStart.copy(this._dollyEnd);let o=(t.pageX+e.x)*.5,a=(t.pageY+e.y)*.5;this._updateZoomParameters(o,a)}_handleTouchMoveDollyPan(t){this.enableZoom&&this._handleTouchMoveDolly(t),this.enablePan&&this._handleTouchMovePan(t)}_handleTouchMoveDollyRotate(t){this.enableZoom&&this._handleTouchMoveDolly(t),this.enableRotate&&this._handleTouchMoveRotate(t)}_addPointer(t){this._pointers.push(t.pointerId)}_removePointer(t){delete this._pointerPositions[t.pointerId];for(let e=0;e<this._pointers.length;e++)if(this._pointers[e]==t.pointerId){this._pointers.splice(e,1);return}}_isTrackingPointer(t){for(let e=0;e<this._pointers.length;e++)if(this._pointers[e]==t.pointerId)return!0;return!1}_trackPointer(t){let e=this._pointerPositions[t.pointerId];e===void 0&&(e=new at,this._pointerPositions[t.pointerId]=e),e.set(t.pageX,t.pageY)}_getSecondPointerPosition(t){let e=t.pointerId===this._pointers[0]?this._pointers[1]:this._pointers[0];return this._pointerPositions[e]}_customWheelEvent(t){let e=t.deltaMode,i={clientX:t.clientX,clientY:t.clientY,deltaY:t.deltaY};switch(e){case 1:i.deltaY*=16;break;case 2:i.deltaY*=100;break}return t.ctrlKey&&!this._controlActive&&(i.deltaY*=10),i}};function RA(n){this.enabled!==!1&&(this._pointers.length===0&&(this.domElement.setPointerCapture(n.pointerId),this.domElement.ownerDocument.addEventListener("pointermove",this._onPointerMove),this.domElement.ownerDocument.addEventListener("pointerup",this._onPointerUp)),!this._isTrackingPointer(n)&&(this._addPointer(n),n.pointerType==="touch"?this._onTouchStart(n):this._onMouseDown(n),this._cursorStyle==="grab"&&(this.domElement.style.cursor="grabbing")))}function PA(n){this.enabled!==!1&&(n.pointerType==="touch"?this._onTouchMove(n):this._onMouseMove(n))}function IA(n){switch(this._removePointer(n),this._pointers.length){case 0:this.domElement.releasePointerCapture(n.pointerId),this.domElement.ownerDocument.removeEventListener("pointermove",this._onPointerMove),this.domElement.ownerDocument.removeEventListener("pointerup",this._onPointerUp),this.dispatchEvent(n_),this.state=ue.NONE,this._cursorStyle==="grab"&&(this.domElement.style.cursor="grab");break;case 1:let t=this._pointers[0],e=this._pointerPositions[t];this._onTouchStart({pointerId:t,pageX:e.x,pageY:e.y});break}}function DA(n){let t;switch(n.button){case 0:t=this.mouseButtons.LEFT;break;case 1:t=this.mouseButtons.MIDDLE;break;case 2:t=this.mouseButtons.RIGHT;break;default:t=-1}switch(t){case xs.DOLLY:if(this.enableZoom===!1)return;this._handleMouseDownDolly(n),this.state=ue.DOLLY;break;case xs.ROTATE:if(n.ctrlKey||n.metaKey||n.shiftKey){if(this.enablePan===!1)return;this._handleMouseDownPan(n),this.state=ue.PAN}else{if(this.enableRotate===!1)return;this._handleMouseDownRotate(n),this.state=ue.ROTATE}break;case xs.PAN:if(n.ctrlKey||n.metaKey||n.shiftKey){if(this.enableRotate===!1)return;this._handleMouseDownRotate(n),this.state=ue.ROTATE}else{if(this.enablePan===!1)return;this._handleMouseDownPan(n),this.state=ue.PAN}break;default:this.state=ue.NONE}this.state!==ue.NONE&&this.dispatchEvent(lp)}function LA(n){switch(this.state){case ue.ROTATE:if(this.enableRotate===!1)return;this._handleMouseMoveRotate(n);break;case ue.DOLLY:if(this.enableZoom===!1)return;this._handleMouseMoveDolly(n);break;case ue.PAN:if(this.enablePan===!1)return;this._handleMouseMovePan(n);break}}function NA(n){this.enabled===!1||this.enableZoom===!1||this.state!==ue.NONE||(n.preventDefault(),this.dispatchEvent(lp),this._handleMouseWheel(this._customWheelEvent(n)),this.dispatchEvent(n_))}function UA(n){this.enabled!==!1&&this._handleKeyDown(n)}function OA(n){switch(this._trackPointer(n),this._pointers.length){case 1:switch(this.touches.ONE){case bs.ROTATE:if(this.enableRotate===!1){this.state=ue.NONE;break}this._handleTouchStartRotate(n),this.state=ue.TOUCH_ROTATE;break;case bs.PAN:if(this.enablePan===!1){this.state=ue.NONE;break}this._handleTouchStartPan(n),this.state=ue.TOUCH_PAN;break;default:this.state=ue.NONE}break;case 2:switch(this.touches.TWO){case bs.DOLLY_PAN:if(this.enableZoom===!1&&this.enablePan===!1)return;this._handleTouchStartDollyPan(n),this.state=ue.TOUCH_DOLLY_PAN;break;case bs.DOLLY_ROTATE:if(this.enableZoom===!1&&this.enableRotate===!1)return;this._handleTouchStartDollyRotate(n),this.state=ue.TOUCH_DOLLY_ROTATE;break;default:this.state=ue.NONE}break;default:this.state=ue.NONE}this.state!==ue.NONE&&this.dispatchEvent(lp)}function kA(n){switch(this._trackPointer(n),this.state){case ue.TOUCH_ROTATE:if(this.enableRotate===!1)return;this._handleTouchMoveRotate(n),this.update();break;case ue.TOUCH_PAN:if(this.enablePan===!1)return;this._handleTouchMovePan(n),this.update();break;case ue.TOUCH_DOLLY_PAN:if(this.enableZoom===!1&&this.enablePan===!1)return;this._handleTouchMoveDollyPan(n),this.update();break;case ue.TOUCH_DOLLY_ROTATE:if(this.enableZoom===!1&&this.enableRotate===!1)return;this._handleTouchMoveDollyRotate(n),this.update();break;default:this.state=ue.NONE}}function FA(n){this.enabled!==!1&&n.preventDefault()}function BA(n){n.key==="Control"&&(this._controlActive=!0,this.domElement.ownerDocument.addEventListener("keyup",this._interceptControlUp,{passive:!0,capture:!0}))}function zA(n){n.key==="Control"&&(this._controlActive=!1,this.domElement.ownerDocument.removeEventListener("keyup",this._interceptControlUp,{passive:!0,capture:!0}))}var i_=[{name:"audience",label:"Audience",help:"from the audience"},{name:"behind",label:"Behind",help:"from behind the followed performer, to copy"},{name:"eye",label:"Own eye",help:"through the followed performer's eyes"},{name:"above",label:"Above",help:"plan from above, audience at the bottom"},{name:"free",label:"Free",help:"drag to turn"}],hh=class{constructor(t,e,i,s){this.camera=t;this.box=i;this.floor=s;this.orbit=new uh(t,e),this.orbit.enabled=!1,this.orbit.enableDamping=!1,this.orbit.minDistance=.6,this.orbit.maxDistance=80,this.orbit.maxPolarAngle=Math.PI*.495}camera;box;floor;view="audience";zoom=1;look={yaw:0,pitch:0};orbit;a=new N;b=new N;choose(t){if(t==="free"&&this.view!=="free"){let{x0:e,x1:i,y0:s,y1:r}=this.box,o=(2.4+1.05*Math.max(i-e,r-s))*Math.max(1,.9/this.camera.aspect);this.orbit.target.set((e+i)/2,(s+r)/2,.9),this.camera.position.copy(this.orbit.target).add(this.a.set(.45*o,-.85*o,.45*o))}this.view=t,this.zoom=1,this.look={yaw:0,pitch:0},this.orbit.enabled=t==="free"}aim(t,e,i,s){let{camera:r}=this,o=r.aspect;this.view==="eye"?r.clearViewOffset():r.setViewOffset(s.width,s.height,0,s.lift/2,s.width,s.height);let a=1-s.lift/s.height,{x0:l,x1:u,y0:h,y1:d}=this.box,p=(l+u)/2,f=m=>{r.fov!==m&&(r.fov=m,r.updateProjectionMatrix())};r.up.set(0,0,1);let g=(m,y,M,b)=>{let E=[m,y,M];return t.toStage(e,E,E),b.set(...E)};if(this.view==="free"){f(45),this.orbit.update();return}if((i||this.view==="behind"||this.view==="eye")&&(!t||!e))return;let v=m=>Math.tan(m*Math.PI/360);if(this.view==="audience"&&i){f(32);let m=1.42/v(32)/Math.min(a,o*.95)/this.zoom;r.position.copy(this.a.set(e.x,e.y-m,1.55)),r.lookAt(this.b.set(e.x,e.y,1.12))}else if(this.view==="audience"){f(32);let m=(u-l)/2+1.5,y=1.55+.16*(d-h),M=Math.max(m/(v(32)*o),y/v(32)/a)/this.zoom;r.position.copy(this.a.set(p,h-M,1.7+M*.13)),r.lookAt(this.b.set(p,h+.25*(d-h),1.15))}else if(this.view==="behind"){f(45);let m=3.7*Math.max(1,.85/o)/this.zoom;r.position.copy(g(0,-m,1.75+.12*m,this.a)),r.lookAt(g(0,1.2,1.05,this.b))}else if(this.view==="eye"){f(86/Math.sqrt(this.zoom));let m=t.entry.body,[y,M,b]=Rr(m,e.angles,[0,.09,m.crown-m.stature*.065],[0,0,0]);r.position.copy(g(y,M,b,this.a));let E=this.look.yaw,A=this.look.pitch-.1;r.lookAt(g(y+Math.sin(E)*Math.cos(A),M+Math.cos(E)*Math.cos(A),b+Math.sin(A),this.b))}else{f(26);let m=this.floor,y=(m.x1-m.x0)/2+.9,M=(m.y1-m.y0)/2+.6,b=Math.max(y/(v(26)*o),M/v(26)/a)/this.zoom,E=i?e.x:(m.x0+m.x1)/2,A=i?e.y:(m.y0+m.y1)/2;r.up.set(0,1,0),r.position.set(E,A,i?Math.min(b,2.1/v(26)/Math.min(a,o)/this.zoom)+1:b+1),r.lookAt(E,A,0)}}};var cp=class{stage=null;eye=null;doc=null;counts=null;movers=[];constructor(){Ce.drawn.push(t=>this.draw(t))}show(t,e){this.doc=e,this.counts=new Pi(e.tempo.times,e.tempo.first,e.tempo.bars,e.tempo.metre);let i=Tg(e);this.movers=e.cast.map((r,o)=>new Yl(r,i[o])),this.stage=new lh(t,e,this.movers);let s=VA(e);this.eye=new hh(this.stage.camera,t,s,s),this.eye.orbit.addEventListener("change",()=>Ce.touch()),this.resize(t)}resize(t){let e=t.parentElement.getBoundingClientRect();this.stage?.resize(Math.max(1,e.width),Math.max(1,e.height),Math.min(window.devicePixelRatio||1,2),0),Ce.touch()}look(t){this.eye?.choose(t),Ce.touch()}leave(){this.stage?.renderer.dispose(),this.stage=this.eye=this.doc=null}draw(t){if(!this.stage||!this.doc||!this.counts||!this.eye)return;let e=this.counts.beatAt(t),i={beat:e,shown:this.doc.cast.map(()=>!0),lit:this.doc.cast.map(s=>s.lit.some(([r,o])=>t>=r&&t<o)),alert:this.doc.cast.map(()=>!1),follow:0,hideBody:-1,trail:1,planes:!0,front:null,walk:-1};this.stage.place(e),this.eye.aim(this.movers[0],this.stage.poses[0],this.doc.cast.length===1,this.stage.size),this.stage.camera.updateMatrixWorld(),this.stage.draw(i)}};function VA(n){let t=n.place.outline.map(([i])=>i),e=n.place.outline.map(([,i])=>i);for(let i of n.standings)for(let[s,r]of i.spots)t.push(s-1,s+1),e.push(r-1,r+1);return t.length?{x0:Math.min(...t),x1:Math.max(...t),y0:Math.min(...e),y1:Math.max(...e)}:{x0:-2,x1:2,y0:-1,y1:2}}var fo=new cp;function s_(){let n=pe(null),[t,e]=rt(ft.value?"The dance is being drawn \u2026":"There is nothing to dance yet."),[i,s]=rt(0),[r,o]=rt("audience");return Vt(()=>{let a=!0,l=_n(()=>{ft.value?.revision!==void 0&&u()});async function u(){try{let d=await ie("dance?flown=0");if(!a)return;s(p=>p+1),setTimeout(()=>{if(!(!a||!n.current)){fo.leave();try{fo.show(n.current,d),fo.look(r),e("")}catch{e("This browser cannot draw in three dimensions; the stage from above shows where everybody stands.")}}})}catch(d){a&&!(d instanceof Me&&d.status===409)?e(d instanceof Error?d.message:String(d)):a&&!ft.value&&e("There is nothing to dance yet.")}}let h=new ResizeObserver(()=>n.current&&fo.resize(n.current));return n.current&&h.observe(n.current.parentElement),()=>{a=!1,l(),h.disconnect(),fo.leave()}},[]),c(Pt,{children:[c("div",{class:"dance",children:[c("canvas",{ref:n,"aria-label":"The performers in motion, as drawn"},i),t&&c("p",{class:"quiet",children:t})]}),c("p",{class:"row",role:"group","aria-label":"Seen from",children:i_.map(a=>c("button",{type:"button","aria-pressed":r===a.name,title:a.help,onClick:()=>{o(a.name),fo.look(a.name)},children:a.label},a.name))}),c("p",{class:"quiet",children:["Danced as drawn.",Ln.value?"":" The page to rehearse with shows it as flown: it is made under Print."]})]})}var GA=["burning-time","handling","crew","posts","watch","hand-overs","lines-of-sight","heat","equipment","extinguishers","fuel-point","fuel","wind","house-rules","downwind","exits","audience-room","to-confirm","not-planned"],HA={"who-is-there":"who is there","in-the-wings":"entrances and exits",joins:"how the moves join",accents:"the accents",wishes:"what you wished for",feasible:"tethers and reach",distances:"distances",walks:"walks","let-go":"where a prop would fly if it were let go","listen-again":"the song's count","as-flown":"how the props really fly","as-danced":"the dance with small errors",mends:"mends",...Object.fromEntries(GA.map(n=>[n,"fire and crew"]))},up=n=>[...new Set(n.map(t=>HA[t]??t))].join(", ");var WA={stop:"Stop",warn:"Warn",note:"Note"};function r_(){let n=ei.value;if(!n)return c("p",{class:"quiet",children:"The checks have not answered yet."});let t=n.revision!==nt.value?.revision;return c("div",{class:t?"findings older":"findings",children:[t&&c("p",{class:"quiet",children:"These are about the show before the last change; it is being looked at again."}),n.open.length>0&&c("p",{class:"quiet",children:["Still being looked at: ",up(n.open),"."]}),n.drawn.length>0&&c("p",{class:"quiet",children:["Looked at as the moves are drawn; how the props really fly comes next: ",up(n.drawn),"."]}),n.complete&&!n.entries.length&&c("p",{children:ft.value?.blocks.length?"Nothing stands against it.":"Nothing is danced yet, so there is nothing to look at."}),c("ol",{children:n.entries.map((e,i)=>{let s=e.of.map(r=>n.findings[r]).filter(Boolean);return c("li",{id:`entry-${i}`,class:`entry ${e.severity} ${Fo.value===i?"pointed":""}`,children:[c("button",{type:"button",class:"told",onClick:()=>qA(s,e.start,i),children:[c("b",{children:WA[e.severity]})," ",e.position&&c("span",{class:"when",children:e.position})," ",c($A,{found:s})," ",e.message]}),c(YA,{found:s,remedies:e.remedies,old:t})]},`${i} ${e.message}`)})}),n.complete&&n.unseen.length>0&&c("details",{children:[c("summary",{children:"What no check looks at"}),c("ul",{children:n.unseen.map(e=>c("li",{children:e},e))})]}),n.cautions.length>0&&c("details",{children:[c("summary",{children:"Cautions"}),c("ul",{children:n.cautions.map(e=>c("li",{children:e},e))})]})]})}function $A({found:n}){let t=[...new Set(n.flatMap(r=>r.who))],e=r=>Ft.value.includes(r)?Ft.value.indexOf(r):Ft.value.length;if(t.sort((r,o)=>e(r)-e(o)),!t.length)return null;let i=t.map(XA),s=t.every(r=>Ft.value.includes(r))&&i.every((r,o)=>r===t[o]);return c("span",{class:"whose",children:[s?hn(t,Ft.value):hn(i,[]),":"]})}function XA(n){let e=(nt.value?.values?.tonight?.stand_ins??[]).find(i=>i.for===n);return e?`${n}\u2019s part, tonight ${e.name}`:n}function qA(n,t,e){Fo.value=e;let i=$t.value;t===null||!i||(Nn(Math.max(0,t)),ss({beat:Math.floor(i.beatAt(t)+1e-6),who:n[0]?.who.length?n[0].who:[]}),setTimeout(()=>document.querySelector(".count.on")?.scrollIntoView({block:"center"})))}function YA({found:n,remedies:t,old:e}){let i=n.flatMap(u=>u.mends),s=i.filter((u,h)=>i.findIndex(d=>d.words===u.words&&JSON.stringify(d.lines)===JSON.stringify(u.lines))===h),r=new Set(s.map(u=>u.words)),o=t.filter(u=>!r.has(u)),[a,l]=rt(null);return c(Pt,{children:[s.length>0&&c("p",{class:"mends",children:s.map(u=>c("button",{type:"button","aria-pressed":a===u,onClick:()=>l(a===u?null:u),children:u.words},u.words))}),a&&c("div",{class:"preview",children:[c("p",{children:"This changes in the file:"}),c("pre",{children:a.lines.map(u=>[...u.out.map(h=>`\u2212 ${h.trim()}`),...u.in.map(h=>`+ ${h.trim()}`)].join(`
`)).join(`
\u2026
`)}),c("button",{type:"button",class:"main",disabled:e,onClick:()=>{l(null),Lt(a.operation,`Mended: ${a.words}.`)},children:"Do it"})]}),o.length>0&&c("ul",{class:"remedies",children:o.map(u=>c("li",{children:u},u))})]})}var dp=null;function a_(n){dp=n}var mo=()=>dp;function Mn(n){if(n?.$ref)return{...Mn(dp.$defs[n.$ref.split("/").pop()]),...n,$ref:void 0};let t=n?.anyOf?.filter(e=>e.type!=="null");if(t?.length===1)return{...Mn(t[0]),description:n.description??Mn(t[0]).description,default:n.default};if(t?.length>1){let e=t.map(Mn).find(i=>i.properties);if(e)return{...e,description:n.description??e.description,orWord:!0};if(t.some(i=>i.type==="array"&&i.items?.type==="string"))return{...n,lines:!0}}return n??{}}var gn=n=>n.replaceAll("_"," ");function sl({of:n,values:t,put:e,path:i,without:s=[],must:r=[]}){let o=Object.entries(n?.properties??{}).filter(([f])=>!s.includes(f)),a=t&&typeof t=="object"?t:{},[l,u]=rt([]),h=([f])=>a[f]!==void 0||r.includes(f),d=[...o.filter(h),...o.filter(f=>!h(f)&&l.includes(f[0]))],p=o.filter(f=>!h(f)&&!l.includes(f[0]));return c("div",{class:"fields",children:[d.map(([f,g])=>c(KA,{name:f,of:Mn(g),value:a[f],set:_=>e(f,_),id:`${i} ${f}`.replaceAll(/\W+/g,"-"),must:r.includes(f)},f)),p.length>0&&c("label",{class:"more",children:["Say more ",c("select",{value:"",onChange:f=>{u([...l,f.currentTarget.value]),f.currentTarget.value=""},children:[c("option",{value:""}),p.map(([f])=>c("option",{value:f,children:gn(f)},f))]})]})]})}var ZA=["lit_by","put_out_by","caller","meets","first_aider","lead"],JA=["who","watches","callers"];function KA({name:n,of:t,value:e,set:i,id:s,must:r}){let o=t.items?Mn(t.items):null,a=t.type==="object"&&!t.properties&&t.additionalProperties,l={name:n,of:t,value:e,set:i,id:s},u=(t.required?.length??0)>1;return t.properties&&e===void 0&&u&&!t.orWord?c(po,{...l,must:r,children:c(dh,{of:t,must:t.required,path:s,word:gn(n),add:i})}):t.properties&&!(t.orWord&&(e===void 0||typeof e=="string"))?c(po,{...l,must:r,children:c(eE,{of:t,value:e??{},set:i,path:s})}):t.orWord?c(tE,{...l,must:r}):JA.includes(n)&&t.lines?c(po,{...l,must:r,children:c(nE,{...l})}):t.lines?c(hp,{...l,must:r,children:c(iE,{...l})}):t.prefixItems?.length===2?c(po,{...l,must:r,children:c(c_,{of:t,value:e,set:i})}):t.type==="array"&&(o?.prefixItems||o?.items)?c(po,{...l,must:r,children:c(u_,{of:t,value:e,set:i,what:n})}):a?c(po,{...l,must:r,children:c(sE,{...l})}):c(hp,{...l,must:r,children:c(jA,{...l,must:r})})}function l_({name:n,value:t,set:e,must:i}){return t===void 0||i?null:c("button",{type:"button",class:"small",title:`Leave ${gn(n)} out`,"aria-label":`Leave ${gn(n)} out`,onClick:()=>{e(null)},children:"\xD7"})}function hp({children:n,...t}){return c("div",{class:"field",children:[c("label",{for:t.id,children:[gn(t.name),t.must&&" *"]}),n,c(l_,{...t}),c("small",{id:`${t.id}-why`,children:[t.of.description,t.of.lines&&"; one a line"]})]})}function po({children:n,...t}){return c("fieldset",{class:"group",children:[c("legend",{children:[gn(t.name),t.must&&" *"," ",c(l_,{...t})]}),t.of.description&&c("small",{children:t.of.description}),n]})}function jA({name:n,of:t,value:e,set:i,id:s,must:r}){let o=e==null?"":String(e),a=t.enum??(t.type==="boolean"?["true","false"]:null),l=`${s}-why`;return a?c("select",{id:s,"aria-describedby":l,value:o||(r?"":String(t.default??"")),onChange:u=>{i(il(u.currentTarget.value))},children:[!o&&c("option",{value:""}),a.map(u=>c("option",{value:String(u),children:QA[String(u)]??String(u)},String(u)))]}):c(fp,{id:s,why:l,given:o,list:ZA.includes(n)?"cast-names":void 0,placeholder:t.examples?.[0]??(t.default!==void 0&&t.default!==null?String(t.default):""),put:u=>i(u?il(u):null)})}var QA={true:"yes",false:"no"};function fp({id:n,why:t,given:e,put:i,placeholder:s,list:r,label:o}){let[a,l]=rt(e);return Vt(()=>l(e),[e]),c("input",{id:n,type:"text","aria-describedby":t,"aria-label":o,list:r,value:a,placeholder:s,onInput:u=>l(u.currentTarget.value),onChange:async()=>{a!==e&&!await i(a.trim())&&l(e)}})}function tE(n){let{of:t,value:e,set:i,id:s,name:r}=n,o=t.properties.kind?"kind":Object.keys(t.properties)[0],a=Mn(t.properties[o]).enum;return c(hp,{...n,children:c("span",{class:"row",children:[a?c("select",{id:s,"aria-describedby":`${s}-why`,value:e??"",onChange:l=>{i(l.currentTarget.value||null)},children:[c("option",{value:""}),a.map(l=>c("option",{children:l},l))]}):c(fp,{id:s,why:`${s}-why`,given:e??"",put:l=>i(l||null)}),e&&c("button",{type:"button",class:"small",onClick:()=>{i({[o]:e})},children:["Say more",c("span",{class:"unseen",children:[" about ",gn(r)]})]})]})})}function eE({of:n,value:t,set:e,path:i}){return c(sl,{of:n,values:t,path:i,put:(r,o)=>{let{[r]:a,...l}=ir(t);return e(o===null?l:{...l,[r]:o})},must:Object.keys(t).length?[]:n.required??[]})}function nE({name:n,value:t,set:e}){let i=(nt.value?.values?.crew??[]).map(l=>l.name),s=n==="callers"?[...Ft.value,...i]:Ft.value,r=t===void 0?[]:[t].flat().map(String),o=n==="who"&&(r.includes("all")||t===void 0),a=(l,u)=>{let h=s.filter(d=>d===l?u:r.includes(d)||o);return e(h.length?n==="who"&&h.length===s.length?"all":h.length===1?h[0]:h:null)};return c("p",{class:"people",children:s.map(l=>c("label",{children:[c("input",{type:"checkbox",checked:o||r.includes(l),onChange:u=>{a(l,u.currentTarget.checked)}})," ",l]},l))})}function iE({value:n,set:t,id:e}){let i=n==null?"":[n].flat().join(`
`),[s,r]=rt(i);return Vt(()=>r(i),[i]),c("textarea",{id:e,"aria-describedby":`${e}-why`,rows:Math.min(6,Math.max(1,s.split(`
`).length)),value:s,onInput:o=>r(o.currentTarget.value),onChange:async()=>{let o=s.split(`
`).map(a=>a.trim()).filter(Boolean);s!==i&&!await t(o.length?o.length===1?o[0]:o:null)&&r(i)}})}var o_=n=>/coordinate/.test(n.prefixItems?.[0]?.description??"");function c_({of:n,value:t,set:e,head:i=""}){let s=o_(n)?["metres across, right of the middle for the audience","metres upstage of the front edge"]:["from","to"],r=o_(n)?["across","upstage"]:s,o=Array.isArray(t)?t.map(String):["",""],[a,l]=rt(o);Vt(()=>l(o),[o.join("|")]);let u=async()=>{a.every(h=>h.trim())&&a.join("|")!==o.join("|")&&!await e(a.map(h=>il(h.trim())))&&l(o)};return c("p",{class:"pair",children:[0,1].map(h=>c("label",{children:[r[h]," ",c("input",{type:"text",inputMode:"decimal","aria-label":`${i}${s[h]}`,value:a[h],onInput:d=>l(h?[a[0],d.currentTarget.value]:[d.currentTarget.value,a[1]]),onChange:()=>{u()}})]},h))})}function u_({of:n,value:t,set:e,what:i,depth:s=""}){let r=Mn(n.items),o=Array.isArray(t)?t:[],[a,l]=rt(0),u=Math.max(a,o.length?0:n.minItems??1),[h,d]=rt([]),p=(v,m)=>e(ir(o).map((y,M)=>M===v?m:y)),f=async v=>{let m=[...ir(o),...h,v];return m.length<(n.minItems??1)?(d([...h,v]),!0):(d([]),l(0),e(m))},g=r.prefixItems?"corner":"outline",_=(v,m,y)=>r.prefixItems?c(c_,{of:r,value:m,set:y,head:`${gn(i)}, ${s}${g} ${v+1}: `}):c(u_,{of:r,value:m,set:y,what:i,depth:`${g} ${v+1}, `});return c("ol",{class:"places",children:[o.map((v,m)=>c("li",{children:[_(m,v,y=>p(m,y)),o.length>(n.minItems??1)&&c("button",{type:"button",class:"small","aria-label":`Take ${g} ${m+1} of ${gn(i)} out`,onClick:()=>{e(ir(o).filter((y,M)=>M!==m))},children:"\xD7"})]},m)),h.map((v,m)=>c("li",{children:_(o.length+m,v,async y=>(d(h.map((M,b)=>b===m?y:M)),!0))},`w${m}`)),[...Array(Math.max(0,u-h.length)).keys()].map(v=>c("li",{children:_(o.length+h.length+v,void 0,f)},`n${o.length+h.length+v}`)),c("li",{children:c("button",{type:"button",class:"small",onClick:()=>l(u+1),children:["Another ",g]})})]})}function sE({name:n,value:t,set:e,id:i}){let s=t??{},[r,o]=rt(""),a=Object.entries(s),[l,u]=rt([]),h=(d,p)=>{let f=p.split(`
`).filter(Boolean),{[d]:g,..._}=ir(s),v=f.length?{..._,[d]:il(p)}:_;return e(Object.keys(v).length?v:null)};return c("div",{class:"map",children:[[...a,...l.filter(d=>!(d in s)).map(d=>[d,""])].map(([d,p])=>c("label",{children:[d," ",c(fp,{given:[p].flat().join("; "),label:`${gn(n)}: ${d}`,put:f=>h(d,f)})]},d)),c("p",{class:"row",children:[c("label",{for:`${i}-new`,class:"unseen",children:["Another one of ",gn(n)]}),c("input",{id:`${i}-new`,type:"text",value:r,placeholder:"name",onInput:d=>o(d.currentTarget.value)}),c("button",{type:"button",class:"small",disabled:!r.trim()||r.trim()in s,onClick:()=>{u([...l,r.trim()]),o("")},children:["Add",c("span",{class:"unseen",children:[" to ",gn(n)]})]})]})]})}function dh({of:n,must:t,path:e,word:i,add:s,without:r}){let[o,a]=rt({}),[l,u]=rt(!1),h=t.filter(p=>o[p]===void 0);if(!l)return c("p",{class:"row",children:c("button",{type:"button",onClick:()=>u(!0),children:["Add ",rE(i)," ",i]})});let d=async(p,f)=>(a(g=>{let{[p]:_,...v}=g;return f===null?v:{...v,[p]:f}}),!0);return c("div",{class:"new-record",role:"group","aria-label":`A new ${i}`,children:[c(sl,{of:n,values:o,put:d,path:e,must:t,without:r}),h.length>0&&c("p",{class:"quiet",children:["Still to be said: ",h.map(gn).join(", "),"."]}),c("p",{class:"row",children:[c("button",{type:"button",class:"main",disabled:h.length>0,onClick:async()=>{await s(o)&&(a({}),u(!1))},children:["Add the ",i]}),c("button",{type:"button",onClick:()=>{a({}),u(!1)},children:"Leave it"})]})]})}var rE=n=>/^[aeiou]/.test(n)?"an":"a";function il(n){return typeof n!="string"?n:n==="true"||n==="false"?n==="true":/^-?\d+(\.\d+)?$/.test(n)&&String(Number(n))===n?Number(n):n}function ir(n){return Array.isArray(n)?n.map(ir):n&&typeof n=="object"?Object.fromEntries(Object.entries(n).map(([t,e])=>[t,ir(e)])):il(n)}function fh({change:n,...t}){return c(sl,{...t,put:(e,i)=>Lt(n({[e]:i}),`${gn(e)} ${i===null?"left out":"changed"}.`)})}var h_={audience:"audience edge",ceilings:"ceiling",scenery:"piece of scenery",exits:"exit",extinguishers:"extinguisher"},oE=[["venue","Place"],["fire","Fire"],["limits","Limits"],["wishes","Wishes for drafts"],["rules","Rules"],["weather","Weather"],["stop_call","Stop call"],["emergency","Emergency"],["drift","Errors to expect"]];function p_(){let[n,t]=rt(mo()!==null);Vt(()=>{n||ie("schema").then(r=>{a_(r),t(!0)})},[]);let e=nt.value?.values;if(!n||!e)return c("p",{class:"quiet",children:e===null?"The file cannot be read: mend it under Text.":"The forms are being made \u2026"});let i=mo(),s={properties:Object.fromEntries(["title","version","date","night","begins"].map(r=>[r,i.properties[r]]))};return c("div",{class:"forms",children:[c("details",{open:!0,children:[c("summary",{children:"Show"}),c(fh,{of:s,values:e,change:r=>({do:"change-titles",values:r}),path:"show"})]}),c("details",{children:[c("summary",{children:"Song"}),c(cE,{values:e})]}),c("details",{children:[c("summary",{children:"Cast"}),c(d_,{group:"cast",kind:"Performer",values:e})]}),c("details",{children:[c("summary",{children:"Crew"}),c(d_,{group:"crew",kind:"CrewMember",values:e})]}),oE.map(([r,o])=>c("details",{children:[c("summary",{children:o}),c("p",{class:"quiet",children:i.properties[r]?.description}),c(fh,{of:Mn(i.properties[r]),values:e[r]??{},change:a=>({do:"change-heading",heading:r,values:a}),path:r,without:[...Object.keys(h_),"lit"]}),r==="venue"&&Object.entries(h_).map(([a,l])=>c(f_,{into:a,word:l,values:e.venue?.[a]??[]},a)),r==="fire"&&e.fire&&c(f_,{into:"lit",word:"time in which somebody is lit",values:e.fire.lit??[]})]},r))]})}function d_({group:n,kind:t,values:e}){let i=e[n]??[],s=o=>{if(n==="crew")return Lt({do:"add-crew",member:o},`${o.name} is in the crew.`);let a=Object.entries(e.formations??{}).filter(([,l])=>l?.spots).map(([l])=>l);return Lt({do:"add-performer",performer:o,spots:Object.fromEntries(a.map(l=>[l,aE(l)]))},`${o.name} is in the cast, and stands beside the others until you move them on the stage.`)},r=mo().$defs[t];return c(Pt,{children:[i.map(o=>c("details",{class:"inner",children:[c("summary",{children:o.name}),c(lE,{group:n,name:o.name}),c(fh,{of:r,values:o,without:["name"],change:a=>({do:"change-person",group:n,name:o.name,values:a}),path:`${n} ${o.name}`}),c("p",{class:"row",children:c("button",{type:"button",onClick:()=>{Lt({do:"remove-person",group:n,name:o.name},`${o.name} is taken out.`)},children:["Take ",o.name," out"]})})]},o.name)),c(dh,{of:r,must:n==="cast"?["name","stature","prop"]:["name","post","duty"],path:`new ${n}`,word:n==="cast"?"performer":"member of the crew",add:s})]})}function aE(n){let t=Object.values(ft.value?.formations[n]?.spots??{}),e=t.length?Math.max(...t.map(s=>s[0])):-2,i=t.length?t[t.length-1][1]:3;return{at:[Math.round((e+2)*20)/20,i]}}function lE({group:n,name:t}){let[e,i]=rt(t);return c("form",{class:"row",onSubmit:s=>{s.preventDefault(),Lt({do:"rename-person",group:n,name:t,new:e},`Now called ${e}.`)},children:[c("label",{children:["Name ",c("input",{type:"text",value:e,onInput:s=>i(s.currentTarget.value)})]}),c("button",{type:"submit",disabled:!e.trim()||e===t,children:"Rename everywhere"})]})}function cE({values:n}){let t=mo(),e=Mn(t.properties.track),i=Mn(e.properties?.corrections??{}),s=n.track?.corrections?.sections??[],[r,o]=rt(""),[a,l]=rt("");return c(Pt,{children:[c(rd,{}),c("p",{class:"quiet",children:[n.track?.file,": put right here what was heard wrongly."]}),c(sl,{of:i,values:n.track?.corrections??{},without:["sections"],path:"count",put:uE}),s.map((u,h)=>c("p",{class:"row",children:[c("span",{children:["From ",u.from,": ",u.name]}),c("button",{type:"button",class:"small",onClick:()=>{Lt({do:"delete-section",number:h},"The section goes on from the one before.")},children:"Take out"})]},`${u.from}${u.name}`)),c("form",{class:"row",onSubmit:u=>{u.preventDefault(),Lt({do:"put-section",start:a,name:r,before:hE(s,a)},`${r} from ${a}.`),o(""),l("")},children:[c("label",{children:["A section ",c("input",{type:"text",value:r,placeholder:"verse",onInput:u=>o(u.currentTarget.value)})]}),c("label",{children:["from bar.beat ",c("input",{type:"text",value:a,placeholder:"9.1",onInput:u=>l(u.currentTarget.value)})]}),c("button",{type:"submit",disabled:!r||!a,children:"Add"})]})]})}async function uE(n,t){return Lt(await ng({[n]:t}),`${gn(n)} ${t===null?"left out":"changed"}; sections begin when they did.`)}function hE(n,t){let e=s=>Number.parseFloat(s),i=n.findIndex(s=>e(String(s.from))>e(t));return i<0?null:i}function f_({into:n,word:t,values:e}){let i=Mn(mo().properties[n==="lit"?"fire":"venue"]),s=Mn(Mn(i.properties[n]).items),r=Array.isArray(e)?e:[],o=[...new Set([...n==="lit"?["who"]:[],...s.required??[],...dE[n]??[]])];return c(Pt,{children:[r.map((a,l)=>c("details",{class:"inner",children:[c("summary",{children:[a.name??`${t} ${l+1}`,n==="lit"?`: ${[a.who??"all"].flat().join(", ")}, ${a.from} to ${a.until}`:""]}),c(fh,{of:s,values:a,change:u=>({do:"change-item",into:n,number:l,values:u}),path:`${n} ${l}`}),c("p",{class:"row",children:c("button",{type:"button",onClick:()=>{Lt({do:"delete-item",into:n,number:l},"Taken out.")},children:"Take it out"})})]},l)),c(dh,{of:s,must:o,path:`new ${n}`,word:t,add:a=>Lt({do:"put-item",into:n,item:a},"Added.")})]})}var dE={exits:["width"],extinguishers:["rating","kind"]};function m_(){let n=(nt.value?.values?.crew??[]).map(t=>t?.name).filter(t=>typeof t=="string");return c("datalist",{id:"cast-names",children:[...new Set([...Ft.value,...n])].map(t=>c("option",{value:t},t))})}var fE=4,pE=.05,g_=-1;function mE(n){let t=new Map;for(let e of n){if(e.entry?.[0]!=="timeline")continue;let i=t.get(e.who)??t.set(e.who,[]).get(e.who),s=Number(e.entry[1]),r=i.find(o=>o.entry===s);r?Object.assign(r,{start:Math.min(r.start,e.start),end:Math.max(r.end,e.end)}):i.push({entry:s,start:e.start,end:e.end,newEnd:0,gap:fE})}for(let e of t.values())for(let i of e)i.newEnd=i.end;return t}function v_(n,t,e,i){let s=mE(n);for(let[u,h]of e){let d=s.get(u)??s.set(u,[]).get(u);if("beat"in t)d.push({entry:g_,start:t.beat,end:t.beat,newEnd:h,gap:0});else for(let p of d)p.entry===t.entry&&(p.newEnd=h)}for(let u of s.values())u.sort((h,d)=>h.start-d.start||h.entry-d.entry);let r="entry"in t?t.entry:g_,o=new Map;for(let u of s.values())for(let h of u)o.set(h.entry,Math.min(o.get(h.entry)??1/0,h.start));let a=o.get(r)??1/0,l=new Map;for(let u of[...o.keys()].sort((h,d)=>o.get(h)-o.get(d))){let h=o.get(u);if(u===r||h<a-1e-6||i.some(g=>Math.abs(g-h)<pE))continue;let d=-1/0,p=!1,f=!1;for(let g of s.values()){let _=g.findIndex(M=>M.entry===u);if(_<1)continue;let v=g[_-1],m=g[_].start-v.end,y=v.newEnd+Math.min(m,v.gap)-g[_].start;d=Math.max(d,y),p||=y>1e-6,f||=v.newEnd<v.end-1e-6&&m<=v.gap+1e-6}if(p||f&&d<-1e-6){l.set(u,d);for(let g of s.values())for(let _ of g)_.entry===u&&(_.newEnd=_.end+d)}}return l}function __(n,t,e,i,s){return[...t].sort((r,o)=>r[0]-o[0]).flatMap(([r,o])=>{let a=n[r]??{},l={};if("from"in a&&(l.from=i(e(r)+o)),"until"in a){let u=s(String(a.until));u!==null&&(l.until=i(u+o))}return Object.keys(l).length?[{do:"change-block",at:["timeline",r],values:l}]:[]})}function y_(n,t,e){let i=-1/0,s=-1/0;for(let r of n)r.entry?.[0]==="timeline"&&(s=Math.max(s,r.end),t.has(Number(r.entry[1]))&&(i=Math.max(i,r.end)));return{count:t.size,until:i>s-1e-6?"the end":e(i)}}var yo={new:"+",gone:"\u2212",moved:"\u2192",changed:"\u2260"},ol={new:"new",gone:"gone",moved:"moved",changed:"changed"},sr="now",rr=Mt(null),Ai=Mt(null),Qn=Mt(null),rl=Mt(!1),Sn=Mt(null),vo=Mt([]),_o=Ne(()=>{let n=Qn.value;return n?[...n.eights.flatMap(t=>t.changes),...n.elsewhere]:[]}),pp=Ne(()=>{let n=Qn.value;if(!n||!Ai.value)return[];let t=Ai.value.old===sr&&Ai.value.new!==sr;return n.changes.flatMap((e,i)=>{let s=t?e.before.length?e.before:e.spans:e.spans.length?e.spans:e.before;return s.length?[{change:e,k:i,spans:s}]:[]})});async function mp(){try{rr.value=(await ie("versions")).versions}catch(n){ii(n instanceof Error?n.message:String(n),!0)}}async function x_(n,t=!1){be.value=null;try{return rr.value=(await ge("versions",{name:n,replace:t})).versions,xe.value=`Kept as ${n.trim()}.`,"kept"}catch(e){return e instanceof Me&&e.trouble?.code==="version-there"?"there":(be.value={words:e instanceof Error?e.message:String(e),anyway:null},"refused")}}async function b_(n){try{rr.value=(await ge("versions/delete",{name:n})).versions,xe.value=`The version ${n} is deleted.`,Ai.value&&Object.values(Ai.value).includes(`version:${n}`)&&al()}catch(t){be.value={words:t instanceof Error?t.message:String(t),anyway:null},mp()}}function gp(n,t){return si(()=>ge("versions/take",{...n,revision:t}),"name"in n?`Back to the version ${n.name}.`:"Back to that step.")}var go=0;async function ph(n,t,e=!1){let i=++go;Ai.value={old:n,new:t},rl.value=!0,e||(Qn.value=null,Sn.value=null,vo.value=[]);try{for(let s=0;;s++)try{let r=await ie(`compare?old=${encodeURIComponent(n)}&new=${encodeURIComponent(t)}`);if(i!==go)return;let o=Sn.value===null?void 0:Qn.value?.changes[Sn.value],a=r.changes.findIndex(l=>l.words===o?.words&&l.who.join()===o.who.join());Qn.value=r,Sn.value=a<0?null:a,a<0&&(vo.value=[]),e||(xe.value=`Compared: ${r.line}.`);return}catch(r){if(!(r instanceof Me&&(r.status===409||r.status===503)&&s<20)||i!==go)throw r;await new Promise(a=>setTimeout(a,500))}}catch(s){if(i!==go)return;be.value={words:s instanceof Error?s.message:String(s),anyway:null},al()}finally{i===go&&(rl.value=!1)}}function al(){go+=1,Ai.value=Qn.value=Sn.value=null,vo.value=[],rl.value=!1}function ll(n){let t=Qn.value?.changes[n],e=$t.value;if(!t)return;Sn.value=n,vo.value=t.moves,xe.value=cl(t,n);let i=pp.value.find(r=>r.k===n);if(!i||!e)return;let s=i.spans[0][0];Nn(Math.max(0,e.secondsAt(s))),ss({beat:Math.floor(s+1e-6),who:t.who.filter(r=>Ft.value.includes(r))}),setTimeout(()=>document.getElementById(`mark-${n}`)?.scrollIntoView({block:"center"}))}function xo(n){let t=_o.value;if(!t.length)return;let e=Sn.value===null?n>0?-1:t.length:t.indexOf(Sn.value);ll(t[Math.min(Math.max(e+n,0),t.length-1)])}function cl(n,t){let e=n.who.length?`${n.who.join(", ")}: `:"",i=n.position?`, ${n.position}`:"";return`Change ${_o.value.indexOf(t)+1} of ${_o.value.length}${i}: ${e}${n.words}`}function vp(n){let t=new Date(n),e=new Date,i=t.toLocaleTimeString([],{hour:"2-digit",minute:"2-digit"});return t.toDateString()===e.toDateString()?`today, ${i}`:`${t.toLocaleDateString([],{day:"numeric",month:"long",year:"numeric"})}, ${i}`}function w_({row:n}){let t=n.start+n.beats,e=pp.value.flatMap(({change:s,k:r,spans:o})=>o.flatMap(([a,l],u)=>{let h=Math.max(l,a+.5);return h>n.start+1e-6&&a<t-1e-6?[{change:s,k:r,n:u,from:Math.max(a,n.start),to:Math.min(h,t),begins:a>=n.start-1e-6}]:[]}));if(!e.length)return null;let i=s=>`${100*s/n.beats}%`;return c("div",{class:"row-marks",role:"group","aria-label":`Changed in the eight from bar ${n.bar}`,children:e.map(({change:s,k:r,n:o,from:a,to:l,begins:u})=>c("div",{class:"mark-line",children:c("button",{type:"button",id:u&&o===0?`mark-${r}`:void 0,class:`row-mark ${s.kind} ${u?"":"goes-on"} ${Sn.value===r?"on":""} ${s.subject==="floor"?"floor":""}`,style:{marginLeft:i(a-n.start),minWidth:i(l-a)},tabIndex:u&&o===0?0:-1,"aria-label":`${ol[s.kind]}. ${cl(s,r)}`,title:s.words,onClick:()=>ll(r),children:u&&c(Pt,{children:[c("b",{"aria-hidden":"true",children:yo[s.kind]})," ",s.who.length>0&&s.who.length<Ft.value.length&&c("em",{children:hn(s.who,Ft.value)})," ",s.words]})})},`${r} ${o}`))})}var gE=900,S_=new WeakMap,M_=new Map;function vE(n){for(let t=n.parentElement;t;t=t.parentElement)if(t!==document.body&&/auto|scroll/.test(getComputedStyle(t).overflowY))return t;return null}function _E(n){let t=M_.get(n);return t||(t=new IntersectionObserver(e=>e.forEach(i=>S_.get(i.target)?.(i.isIntersecting)),{root:n,rootMargin:`${gE}px 0px`}),M_.set(n,t)),t}function T_({on:n,must:t,tall:e,children:i}){let s=pe(null),[r,o]=rt(!1),[a,l]=rt(!1),u=pe(null);if(Vt(()=>{let d=s.current;if(!n||!d)return;let p=_E(vE(d)),f=()=>l(!0),g=()=>l(!1);return S_.set(d,_=>{!_&&d.firstElementChild&&(u.current=d.getBoundingClientRect().height),o(_)}),p.observe(d),addEventListener("beforeprint",f),addEventListener("afterprint",g),()=>{p.unobserve(d),removeEventListener("beforeprint",f),removeEventListener("afterprint",g)}},[n]),!n)return c(Pt,{children:i()});let h=r||t||a;return c("div",{ref:s,style:h?void 0:{height:u.current!==null?`${u.current}px`:`${e}rem`},children:h&&i()})}var yE=.05,xE=.5,A_=.05,bE=.02,Es=n=>Math.round(Math.round(n/A_)*A_*100)/100,sn=Mt(null),As=Mt(new Map),mh=0,E_=Promise.resolve();function ul(n,t){if(sn.value?.key===n)return sn.value.at;let e=As.value.get(n);return e&&!(Li.value&&!mh)?e:t}function bo(n,t,e,i){As.value=new Map(Li.value&&!mh?[]:As.value).set(n,t),mh+=1,E_=E_.then(async()=>{if(As.value.get(n)===t){let s=e();if(!s||!await Lt(s,i)){let r=new Map(As.value);r.delete(n),As.value=r}}mh-=1,As.value=new Map(As.value)})}function C_(n){sn.value&&(sn.value={...sn.value,at:n})}function R_(){let n=sn.value;sn.value=null,n&&Math.hypot(n.at[0]-n.from[0],n.at[1]-n.from[1])>bE&&n.drop(n.at)}function hl({id:n,plan:t,at:e,words:i,put:s,remove:r,class:o="",shape:a,size:l,children:u}){let[h,d]=t.at(...e),p=Ln.value?{class:`handle ${o}`,role:"img","aria-label":`${i}, ${e[0].toFixed(2)} across, ${e[1].toFixed(2)} upstage`}:{class:`handle ${o}`,tabindex:0,role:"button","aria-label":`${i}, ${e[0].toFixed(2)} across, ${e[1].toFixed(2)} upstage; arrow keys move by 5 cm, with Shift by 50 cm${r?"; Delete takes it out":""}`,onPointerDown:f=>{f.preventDefault(),f.currentTarget.focus(),t.hold(f.pointerId),sn.value={key:n,words:i,at:e,from:e,drop:s}},onKeyDown:f=>{if(r&&(f.key==="Delete"||f.key==="Backspace")){f.preventDefault(),r();return}let g=f.shiftKey?xE:yE,_={ArrowLeft:[-g,0],ArrowRight:[g,0],ArrowUp:[0,g],ArrowDown:[0,-g]};_[f.key]&&(f.preventDefault(),s([Es(e[0]+_[f.key][0]),Es(e[1]+_[f.key][1])]))}};return c("g",{class:sn.value?.key===n?"held dragged":"held",children:[a==="circle"?c("circle",{...p,cx:h,cy:d,r:l}):c("rect",{...p,x:h-l,y:d-l,width:2*l,height:2*l,transform:a==="diamond"?`rotate(45 ${h} ${d})`:void 0}),u]})}function P_(n){let t=[],e=[],i=([p,f])=>{t.push(p),e.push(f)};n.place.outline.forEach(i),n.place.audience.forEach(p=>p.line.forEach(i)),n.crew.forEach(p=>i(p.at)),n.place.extinguishers.forEach(i),n.entrances.forEach(p=>i(p.place)),n.place.fuel&&i(n.place.fuel);for(let p of Object.values(n.formations))Object.values(p.spots??{}).forEach(i);if(!t.length)return{x0:-5,x1:5,y0:-5,y1:8};let s=(p,f,g)=>p.filter(_=>_>f&&_<g),r=n.place.outline.length?n.place.outline:Object.values(n.formations).flatMap(p=>Object.values(p.spots??{}).map(f=>[f[0],f[1]])),o=r.map(p=>p[0]),a=r.map(p=>p[1]),[l,u,h,d]=[Math.min(...o)-5,Math.max(...o)+5,Math.min(...a)-7,Math.max(...a)+6];return{x0:Math.min(...o,...s(t,l,u))-.8,x1:Math.max(...o,...s(t,l,u))+.8,y0:Math.min(...a,...s(e,h,d))-.8,y1:Math.max(...a,...s(e,h,d))+.8}}function I_(n,t){return[...n.standings].reverse().find(e=>e.walk<=t+1e-6)??n.standings[0]??null}function D_(n,t){return n.flatMap(([e,i],s)=>n.slice(s+1).flatMap(([r,o])=>{let a=Math.hypot(i[0]-o[0],i[1]-o[1]);return a<(t.reach[e]??1)+(t.reach[r]??1)?[[[i[0],i[1]],[o[0],o[1]],a]]:[]}))}function gh(n,t,e){return t.map(i=>[n,i,Math.hypot(n[0]-i[0],n[1]-i[1])]).sort((i,s)=>i[2]-s[2]).slice(0,e)}function _p(n,t){let e=1/0,i=0;return n.slice(1).forEach((s,r)=>{let[o,a]=n[r],l=s[0]-o,u=s[1]-a,h=Math.min(1,Math.max(0,((t[0]-o)*l+(t[1]-a)*u)/(l*l+u*u||1))),d=Math.hypot(o+h*l-t[0],a+h*u-t[1]);d<e&&([e,i]=[d,r])}),i}var Ei=Mt(null),dl=Mt(null),wE=()=>nt.value?.values?.staging??[],xp=(n,t)=>n.walks.filter(e=>e.path?.[0]==="staging"&&e.path[1]===t);function bp(n){let t=ft.value?.standings.find(e=>e.path[0]==="staging"&&e.path[1]===n);Ei.value=n,Kt.value="stage",t&&$t.value&&Nn(Math.max(0,$t.value.secondsAt(t.walk)))}function yp(n,t){let e=ft.value?xp(ft.value,n).find(i=>i.who===t):void 0;return e?e.via.map(([i,s])=>[i,s]):[]}function vh(n,t,e){return{do:"set-way",number:n,who:t,points:e}}function L_({plan:n}){let t=ft.value,e=Ei.value;if(e===null)return null;let i=xp(t,e);return c("g",{class:"ways",children:i.map(s=>c(ME,{walk:s,number:e,plan:n,all:i},s.who))})}function ME({walk:n,number:t,plan:e,all:i}){let s=ft.value,r=dl.value===n.who,o=n.points[0],a=n.points[n.points.length-1],l=v=>`way ${t} ${n.who} ${v}`,u=n.via.map((v,m)=>ul(l(m),v)),h=u.some(([v,m],y)=>v!==n.via[y][0]||m!==n.via[y][1]),d=v=>v.map(m=>e.at(...m).map(y=>y.toFixed(2)).join(",")).join(" "),p=[o,...u,a],f=(v,m)=>bo(l(v),m,()=>{let y=yp(t,n.who);return v>=y.length?null:(y[v]=m,vh(t,n.who,y))},`${n.who} walks through ${m[0]}, ${m[1]}.`),g=v=>{let m=yp(t,n.who).filter((y,M)=>M!==v);Lt(vh(t,n.who,m),`A point of ${n.who}'s way is taken out.`)},_=u.findIndex((v,m)=>sn.value?.key===l(m));return c("g",{class:r?"way on":"way",children:[c("polyline",{class:"way-line",points:d(n.points)}),h&&c("polyline",{class:"way-new",points:d(p)}),c("polyline",{class:"way-hold",points:d(h?p:n.points),onPointerDown:v=>{v.preventDefault(),dl.value=n.who;let m=e.place(v),y=_p(p,m);e.hold(v.pointerId),sn.value={key:`new point ${n.who}`,words:`a new point of ${n.who}'s way`,at:m,from:[1/0,1/0],drop:M=>{N_(t,n.who,y,M)}}},children:c("title",{children:[n.who,": ",n.length.toFixed(1)," m; take hold of the way to lead it through another point"]})}),c("circle",{class:"way-start",cx:e.at(...o)[0],cy:e.at(...o)[1],r:.24}),EE(n).map(({count:v,at:m})=>{let[y,M]=e.at(...m);return c("g",{class:"way-moment",children:[c("circle",{cx:y,cy:M,r:.07}),r&&v%4===1&&c("text",{x:y+.14,y:M-.12,children:v})]},v)}),sn.value?.key===`new point ${n.who}`&&c(SE,{plan:e,path:p,at:sn.value.at}),_>=0&&c(TE,{plan:e,at:u[_],walk:n,others:AE(s,i,n,n.via[_])}),u.map((v,m)=>c(hl,{id:l(m),plan:e,at:v,shape:"diamond",size:.2,class:"via",words:`Point ${m+1} of ${u.length} of ${n.who}'s way`,put:y=>{dl.value=n.who,f(m,y)},remove:()=>g(m)},m))]})}async function N_(n,t,e,i){let s=yp(n,t);s.splice(e,0,i),await Lt(vh(n,t,s),`${t} walks through ${i[0]}, ${i[1]}.`)&&U_(`Point ${e+1} of ${s.length} of ${t}'s way`)}function U_(n,t=60){let e=[...document.querySelectorAll(".via.handle")].find(i=>i.getAttribute("aria-label")?.startsWith(n));e?e.focus():t>0&&setTimeout(()=>U_(n,t-1),100)}function SE({plan:n,path:t,at:e}){let i=_p(t,e),[s,r]=n.at(...e),o=[t[i],e,t[i+1]].map(a=>n.at(...a).map(l=>l.toFixed(2)).join(",")).join(" ");return c("g",{children:[c("polyline",{class:"way-new",points:o}),c("circle",{class:"via handle",cx:s,cy:r,r:.2})]})}function TE({plan:n,at:t,walk:e,others:i}){let[s,r]=n.at(...t);return c("g",{class:"close",children:[c("circle",{class:"reach",cx:s,cy:r,r:ft.value.reach[e.who]??1}),c(_h,{plan:n,lines:gh(t,i,2)})]})}function _h({plan:n,lines:t}){return c(Pt,{children:t.map(([e,i,s])=>{let[r,o]=n.at(...e),[a,l]=n.at(...i);return c("g",{class:"close",children:[c("line",{x1:r,y1:o,x2:a,y2:l}),c("text",{x:(r+a)/2,y:(o+l)/2-.15,children:[s.toFixed(2)," m"]})]},`${r} ${o} ${a} ${l}`)})})}function AE(n,t,e,i){let s=e.points.map(([a,l])=>Math.hypot(a-i[0],l-i[1])),r=s.indexOf(Math.min(...s)),o=n.standings.find(a=>a.path[0]==="staging"&&a.path[1]===Ei.value);return Ft.value.filter(a=>a!==e.who).flatMap(a=>{let l=t.find(h=>h.who===a),u=o?.spots[a];return l?[l.points[r]]:u?[[u[0],u[1]]]:[]})}function EE(n){let t=n.end-n.start,e=n.points.length-1;return[...Array(Math.max(0,Math.ceil(t-1e-6)-1)).keys()].map(i=>{let s=(i+1)/t*e,r=Math.min(Math.floor(s),e-1),[o,a]=[n.points[r],n.points[r+1]];return{count:i+2,at:[o[0]+(s-r)*(a[0]-o[0]),o[1]+(s-r)*(a[1]-o[1])]}})}function O_(){let n=ft.value,t=wE(),e=Ei.value!==null&&Ei.value<t.length?Ei.value:null,i=t.map((s,r)=>({row:s,k:r})).slice(1);return c("fieldset",{class:"walk-form",children:[c("legend",{children:"Walks"}),!i.length&&c("p",{class:"quiet",children:"Nobody walks yet: take another formation from a moment on, below."}),i.length>0&&c("label",{children:["Look at ",c("select",{value:e===null?"":String(e),onChange:s=>{let r=s.currentTarget.value;r===""?Ei.value=null:bp(Number(r))},children:[c("option",{value:"",children:"no walk"}),i.map(({row:s,k:r})=>c("option",{value:String(r),children:["to ",s.formation,", from ",s.from]},r))]})]}),e!==null&&e>0&&c(CE,{number:e,row:t[e],now:n},e)]})}function CE({number:n,row:t,now:e}){let i=xp(e,n),s=(o,a)=>Lt({do:"change-walk",number:n,values:o},a),r=Ft.value.filter(o=>!i.some(a=>a.who===o));return c(Pt,{children:[c(or,{label:"From",value:String(t.from),put:o=>s({from:o},`The walk begins at ${o}.`)}),c(or,{label:"in beats",value:String(t.beats??""),put:o=>s({beats:Number(o)||o},`The walk takes ${o} beats.`)}),c("ul",{class:"way-list",children:i.map(o=>{let a=o.via.length;return c("li",{class:dl.value===o.who?"on":"",children:[c("span",{children:[c("b",{children:o.who})," ",o.length.toFixed(1)," m, ",a?`through ${a} ${a===1?"point":"points"}`:"straight",", ",(o.length/Math.max(o.end_s-o.start_s,1e-6)).toFixed(1)," m/s in the mean"]}),c("button",{type:"button",class:"small",onClick:()=>{dl.value=o.who,N_(n,o.who,...RE(o))},children:["Add a point",c("span",{class:"unseen",children:[" to ",o.who,"'s way"]})]}),c("button",{type:"button",class:"small",disabled:!a,onClick:()=>{Lt(vh(n,o.who,[]),`${o.who} walks straight.`)},children:["Straight",c("span",{class:"unseen",children:[" for ",o.who]})]})]},o.who)})}),r.length>0&&c("p",{class:"quiet",children:[hn(r,Ft.value)," ",r.length>1||r.length===Ft.value.length&&r.length>1?"stay":"stays"," where ",r.length>1?"they are":"the walk begins","."]}),c("p",{class:"quiet",children:"On the plan: small dots are counts; take hold of a way to lead it through another point; a way through points is a curve."}),c("p",{class:"row",children:c("button",{type:"button",onClick:()=>{Lt({do:"delete-walk",number:n},"The walk is deleted.").then(o=>o&&(Ei.value=null))},children:"Delete this walk"})})]})}function RE(n){let t=[n.points[0],...n.via,n.points[n.points.length-1]],e=t.slice(1).map((a,l)=>Math.hypot(a[0]-t[l][0],a[1]-t[l][1])),i=e.indexOf(Math.max(...e)),[s,r]=[t[i],t[i+1]],o=Math.min(.5,e[i]/4)/(e[i]||1);return[i,[Es((s[0]+r[0])/2-o*(r[1]-s[1])),Es((s[1]+r[1])/2+o*(r[0]-s[0]))]]}function or({label:n,value:t,put:e}){let[i,s]=rt(t);return Vt(()=>s(t),[t]),c("label",{class:"kept-field",children:[n," ",c("input",{type:"text",value:i,onInput:r=>s(r.currentTarget.value),onChange:async()=>{let r=i.trim();r&&r!==t&&!await e(r)&&s(t)}})]})}function yh(n){let t=Math.max(0,Math.round($t.value.beatAt(n)));return{beat:t,words:an($t.value,t)}}var wp=["stage left","stage right","upstage"],PE=8,k_=()=>nt.value?.values?.entrances??[],F_=n=>n==="all"?Ft.value:[n].flat().map(String);function B_(n){let t=new Map;for(let e of ft.value?.entrances??[]){if(e.end<=n.start||e.start>=n.start+n.beats)continue;let i=`${e.start} ${e.end} ${e.on} ${e.side}`;t.set(i,[...t.get(i)??[],e])}return[...t.values()].map(e=>({start:e[0].start,end:e[0].end,words:IE(e)}))}function IE(n){let t=n.map(i=>i.who),e=t.length>1;return`${hn(t,Ft.value)} ${e?n[0].words.replace("comes","come").replace("goes","go"):n[0].words}`}function Mp(n){Kt.value="stage",$t.value&&Nn(Math.max(0,$t.value.secondsAt(n)))}function z_(n,t,e){let i=ft.value.entrances.filter(p=>p.who===n),s=i.filter(p=>!p.on&&p.start<=t.start+1e-6),r=s[s.length-1]??i[0],o=Number(r.path[1]),a=k_()[o],l=F_(a.who).filter(p=>p!==n);if(!l.length)return{do:"change-item",into:"entrances",number:o,values:{at:e,side:null}};let{side:u,who:h,...d}=a;return{do:"do-together",said:`${n} waits elsewhere`,operations:[{do:"change-item",into:"entrances",number:o,values:{who:l}},{do:"put-item",into:"entrances",item:{who:n,...d,at:e}}]}}function V_(){return c("fieldset",{class:"entrances",children:[c("legend",{children:"Entrances and exits"}),c("p",{class:"quiet",children:"Whoever comes on first waits in the wings until then. They walk to their spot in the formation that stands. In the wings nobody may be lit."}),c("ul",{class:"list",children:k_().map((n,t)=>c(DE,{row:n,number:t},t))}),c(LE,{})]})}function DE({row:n,number:t}){let e=n.comes_on!==void 0,i=e?"comes_on":"goes_off",s=F_(n.who),r=hn(s,Ft.value),o=ft.value.entrances.find(u=>u.path[1]===t),a=(u,h)=>Lt({do:"change-item",into:"entrances",number:t,values:u},h),l=`${r} ${s.length>1?e?"come on":"go off":e?"comes on":"goes off"}`;return c("li",{children:[c("button",{type:"button",class:"small",disabled:!o,onClick:()=>o&&Mp(o.start),children:l})," ",c(or,{label:"at",value:String(n[i]),put:u=>a({[i]:u},`${l} at ${u}.`)})," ",c(or,{label:"beats",value:String(n.beats),put:u=>a({beats:u},`${l} in ${u} beats.`)})," ",c("label",{children:[e?"from":"to"," ",c("select",{value:n.side??"",onChange:u=>{a({side:u.currentTarget.value,at:null},`${l}: ${u.currentTarget.value}.`)},children:[n.side===void 0&&c("option",{value:"",children:["[",[n.at].flat().join(", "),"]"]}),wp.map(u=>c("option",{children:u},u))]})]})," ",c("button",{type:"button",class:"small",onClick:()=>{Lt({do:"delete-item",into:"entrances",number:t},"Deleted.")},children:["Delete",c("span",{class:"unseen",children:[" that ",l," at ",String(n[i])]})]})]})}function LE(){let[n,t]=rt(""),[e,i]=rt(!0),[s,r]=rt(null),[o,a]=rt(PE),[l,u]=rt(wp[0]),h=yh(Ue.value).words,d=n||Ft.value[0],p=(s??h).trim(),f=async()=>{let g={who:d,[e?"comes_on":"goes_off"]:p,beats:o,side:l};await Lt({do:"put-item",into:"entrances",item:g},`${d} ${e?"comes on":"goes off"} at ${p}.`)&&r(_=>_?.trim()===p?null:_)};return c("form",{class:"row","aria-label":"A new entrance or exit",onSubmit:g=>{g.preventDefault(),f()},children:[c("label",{children:["Who ",c("select",{value:d,onChange:g=>t(g.currentTarget.value),children:[Ft.value.map(g=>c("option",{children:g},g)),Ft.value.length>1&&c("option",{value:"all",children:"all"})]})]}),c("label",{children:["does ",c("select",{value:e?"on":"off",onChange:g=>i(g.currentTarget.value==="on"),children:[c("option",{value:"on",children:"comes on"}),c("option",{value:"off",children:"goes off"})]})]}),c("label",{children:["at ",c("input",{type:"text",size:6,required:!0,value:s??h,onInput:g=>r(g.currentTarget.value)})]}),c("label",{children:[e?"from":"to"," ",c("select",{value:l,onChange:g=>u(g.currentTarget.value),children:wp.map(g=>c("option",{children:g},g))})]}),c("label",{class:"stepper",children:["walking for ",c("input",{type:"number",min:1,step:1,value:o,onInput:g=>{let _=Number(g.currentTarget.value);_>=1&&a(_)}})," beats"]}),c("button",{type:"submit",class:"main",children:[d==="all"?"All":d," ",e?d==="all"?"come on":"comes on":d==="all"?"go off":"goes off"," at ",p]})]})}var xh=48;function Tp(){let n=ft.value,t=$t.value;if(!n||!t)return[];let e=n.blocks.map(s=>s.start),i=n.blocks.map(s=>s.end);return Nm(t,n.sections,Math.min(0,...e),Math.max(t.beatAt(n.duration),...i))}var G_=Ne(Tp),H_=Ne(()=>{let n=$t.value?.beatAt(Ue.value)??0;return G_.value.find(t=>n>=t.start&&n<t.start+t.beats)?.start??null}),NE=600,UE=2.9;function W_({only:n}){let t=G_.value,e=n??Ft.value,i=t.length*e.length>NE,s=Math.max(1,...t.map(r=>r.beats));return c("div",{class:Li.value?"sheet":"sheet older",role:"group","aria-label":"The song in eights; arrow keys walk over the counts",onKeyDown:r=>ZE(r,t),children:t.map((r,o)=>c(OE,{row:r,wide:s,first:o===0,who:e,many:i},r.start))})}function OE({many:n,...t}){let{row:e,first:i,who:s}=t,o=n&&(i||(a=>a!=null&&a>=e.start&&a<e.start+e.beats)(Be.value?.beat)||H_.value===e.start);return c(T_,{on:n,must:o,tall:3+UE*s.length,children:()=>c(kE,{...t})})}function kE({row:n,wide:t,first:e,who:i}){let s=Yh(n,i,gr.value),r=$t.value,o=e?Be.value:null;return c("div",{class:"part-row",children:[n.heads&&n.section&&c("h2",{class:"part",children:[n.section.name," ",c("small",{children:["bar ",n.bar,FE(n.section)]})]}),c("div",{class:"eight",children:[c("button",{class:"bar",type:"button",tabIndex:-1,title:"Go there in the song",onClick:()=>Nn(r.secondsAt(n.start)),children:n.bar}),c("div",{class:"lines",style:{width:`${100*n.beats/t}%`},children:[c("div",{class:"counts","aria-hidden":"true",children:$_(n).map(a=>c("i",{children:a+1},a))}),s.map(a=>c(BE,{line:a,row:n,named:s.length>1||a.who.length<Ft.value.length,entry:e&&o===null},a.who.join())),c(HE,{row:n}),c(w_,{row:n}),c("div",{class:"strip",children:[c(WE,{row:n}),c(pg,{row:n,seconds:[r.secondsAt(n.start),r.secondsAt(n.start+n.beats)]})]}),c(XE,{row:n})]}),c(qE,{row:n})]})]})}function FE(n){let t=ft.value.sections.map(i=>i.energy).sort((i,s)=>i-s),e=t.indexOf(n.energy)/Math.max(1,t.length-1);return t.length<3?"":e<=.25?", calm":e>=.75?", full":""}var $_=n=>[...Array(Math.max(1,Math.round(n.beats))).keys()],bh=(n,t)=>`${100*(Math.min(Math.max(t,n.start),n.start+n.beats)-n.start)/n.beats}%`,wh=(n,t,e)=>({left:bh(n,t),width:`calc(${bh(n,e)} - ${bh(n,t)})`});function BE({line:n,row:t,named:e,entry:i}){return c("div",{class:"line",children:[e&&c("span",{class:"who",children:hn(n.who,Ft.value)}),c("div",{class:"bars",children:[$_(t).map(s=>c(zE,{beat:t.start+s,line:n,row:t,entry:i&&s===0},s)),Om(n.blocks).map(s=>c("span",{class:"gap","aria-hidden":"true",style:wh(t,s.start,s.end)},s.start)),n.blocks.map(s=>c(GE,{block:s,line:n,row:t},`${s.kind} ${s.start}`))]})]})}function zE({beat:n,line:t,row:e,entry:i}){let s=pe(null),r=Be.value,o=r!==null&&r.beat===n&&r.who.some(l=>t.who.includes(l));Vt(()=>{o&&pr.value&&s.current?.focus()},[o]);let a=Zh(t.blocks,n);return c("button",{ref:s,type:"button",class:o?"count on":"count",tabIndex:o||i?0:-1,"aria-current":o?"location":void 0,"aria-label":`Bar ${e.bar}, count ${Math.round(n-e.start)+1}, ${hn(t.who,Ft.value)}: ${a?VE(a):"nothing"}`,onClick:()=>X_({beat:n,who:t.who})})}function X_(n){if(Ln.value)return Sp(n);pr.value=!1,ss(n),qn.value=!0}function Sp(n){ss(n),Nn($t.value.secondsAt(n.beat))}function VE(n){return n.kind==="link"?"a link":n.phrase?`${n.title}, of the phrase ${n.phrase}`:n.title}function GE({block:n,line:t,row:e}){let i=n.start>=e.start-1e-6,s=n.end<=e.start+e.beats+1e-6,r=Be.value,o=r!==null&&n.path!==null&&r.who.some(u=>t.who.includes(u))&&r.beat>=n.start-1e-6&&r.beat<n.end-1e-6,a=["block",n.path===null?"between":"written",n.kind,i?"begins":"",s?"ends":"",o?"chosen":""].join(" "),l=n.kind!=="link"&&(n.path!==null||n.end-n.start>1.5);return c("div",{class:a,"aria-hidden":"true",style:wh(e,n.start,n.end),title:[n.title,...n.words].join(`
`),onClick:u=>{let h=u.currentTarget.parentElement.getBoundingClientRect(),d=e.start+Math.floor((u.clientX-h.left)/h.width*e.beats);X_({beat:d,who:t.who})},children:[l&&c("span",{children:i?n.title:`\u2026 ${n.title}`}),i&&l&&n.phrase&&c("small",{children:n.phrase})]})}function HE({row:n}){let t=new Map;for(let i of ft.value?.walks??[]){if(i.end<=n.start||i.start>=n.start+n.beats||i.length<.05||i.path?.[0]==="entrances")continue;let s=`${i.start} ${i.end}`,r=t.get(s);r?r.who.push(i.who):t.set(s,{start:i.start,end:i.end,who:[i.who],number:i.path?.[0]==="staging"?Number(i.path[1]):null})}let e=B_(n);return!t.size&&!e.length?null:c("div",{class:"walks",children:[e.map(i=>c("button",{type:"button",class:"coming",style:wh(n,i.start,i.end),title:"See it on the stage",onClick:()=>Mp(i.start),children:i.words},i.words)),[...t.values()].map(i=>{let s=i.who.length>1||i.who.length===Ft.value.length&&Ft.value.length>1;return c("button",{type:"button",style:wh(n,i.start,i.end),disabled:i.number===null,title:"See the ways on the stage",onClick:()=>bp(i.number),children:[hn(i.who,Ft.value)," ",s?"walk":"walks"]},i.start)})]})}function WE({row:n}){let t=is.value?.loudness,e=$t.value,i=$E.value;if(!t||!e||!i.length)return null;let s=[...Array(xh).keys()].map(r=>{let o=Math.floor(e.secondsAt(n.start+r/xh*n.beats)/t.step),a=Math.ceil(e.secondsAt(n.start+(r+1)/xh*n.beats)/t.step),l=Math.max(0,...i.slice(Math.max(o,0),Math.max(a,0)));return`M${r+.5} 10V${(10-9.6*l).toFixed(2)}`});return c("svg",{class:"loudness",viewBox:`0 0 ${xh} 10`,preserveAspectRatio:"none","aria-hidden":"true",children:c("path",{d:s.join("")})})}var $E=Ne(()=>{let n=is.value?.loudness.db??[],t=[...n.keys()].sort((i,s)=>n[i]-n[s]),e=new Array(n.length);return t.forEach((i,s)=>e[i]=(s+1)/n.length),e});function XE({row:n}){if(H_.value!==n.start)return null;let e=$t.value.beatAt(Ue.value);return c("b",{class:"head",style:{left:bh(n,e)},"aria-hidden":"true"})}function qE({row:n}){let t=$t.value,e=(ei.value?.entries??[]).flatMap((s,r)=>{if(s.severity==="note"||s.start===null)return[];let o=t.beatAt(s.start);return o>=n.start&&o<n.start+n.beats?[{entry:s,k:r}]:[]}),i=ei.value?.revision!==ft.value?.revision;return c("div",{class:i?"margin older":"margin",children:e.map(({entry:s,k:r})=>c(YE,{entry:s,k:r},r))})}function YE({entry:n,k:t}){return c("button",{type:"button",class:`remark ${n.severity}`,onClick:()=>{Kt.value="findings",Fo.value=t,setTimeout(()=>document.getElementById(`entry-${t}`)?.scrollIntoView({block:"nearest"}))},children:[c("b",{children:n.severity==="stop"?"Stop":"Warn"})," ",n.message]})}function Ap(){let n=Be.value;return n?n.who.flatMap(t=>{let e=Zh(gr.value.get(t)??[],n.beat);return e&&e.path!==null?[e]:[]}):[]}function ZE(n,t){if(!n.target.classList.contains("count"))return;let e=n.ctrlKey||n.metaKey,i=Ap(),r=(Ln.value?e?{}:{Enter:()=>Sp(Be.value)," ":()=>Sp(Be.value)}:e?{c:()=>Bo(i),x:()=>Ul(i),v:()=>Ol(o=>an($t.value,o),fl)}:{Delete:()=>Mh(i),Backspace:()=>Mh(i),Enter:()=>qn.value=!0," ":()=>qn.value=!0})[n.key];if(r&&Be.value){n.preventDefault(),r();return}!e&&!n.altKey&&JE(n.key,t)&&n.preventDefault()}async function Mh(n){let t=Nl(n).map(e=>e.path);t.length&&await Lt(nd(t),`Deleted: ${n[0].title}.`)}function fl(n){let e=(ft.value?.blocks??[]).filter(r=>r.entry?.[0]==="timeline"&&r.start>n+1e-6).map(r=>Number(r.entry[1])).filter(Number.isFinite);if(!e.length)return null;let i=Math.min(...e),s=(nt.value?.values?.timeline??[])[i];return s&&("from"in s||"accent"in s)?i:null}function JE(n,t){let e={ArrowLeft:[-1,0],ArrowRight:[1,0],ArrowUp:[0,-1],ArrowDown:[0,1]};if(!t.length||!(n in e||["Home","End","PageUp","PageDown"].includes(n)))return!1;let i=Be.value??{beat:t[0].start,who:Ft.value},s=Math.max(0,t.findIndex(p=>i.beat>=p.start&&i.beat<p.start+p.beats)),r=p=>Yh(p,Ft.value,gr.value),o=p=>p.start+Math.max(1,Math.round(p.beats))-1,a=t[s],l=i.beat,u=Math.max(0,r(a).findIndex(p=>p.who.includes(i.who[0]))),[h,d]=e[n]??[0,0];if(h)l=Math.min(Math.max(l+h,t[0].start),o(t[t.length-1])),a=t.find(p=>l>=p.start&&l<p.start+p.beats)??a,u=Math.max(0,r(a).findIndex(p=>p.who.includes(i.who[0])));else if(d){if(u+=d,u<0||u>=r(a).length){let p=t[s+d];if(!p)return!0;l=Math.min(p.start+(l-a.start),o(p)),a=p,u=d>0?0:r(a).length-1}}else if(n==="Home")l=a.start;else if(n==="End")l=o(a);else{let p=t.filter(f=>f.heads);a=(n==="PageDown"?p.find(f=>f.start>i.beat):[...p].reverse().find(f=>f.start<t[s].start))??a,l=a.start,u=0}return pr.value=!0,ss({beat:l,who:r(a)[u].who}),!0}function J_(){let n=Be.value,t=$t.value,e=pe(null),i=Ap(),s=()=>e.current?.querySelector("form input, .steps button")?.focus({preventScroll:!0});if(Vt(()=>{qn.value&&s()},[qn.value,n?.beat,n?.who.join()]),Vt(()=>{qn.value&&document.activeElement===document.body&&s()},[i[0]?.path?.join()]),!n||!t||!qn.value)return null;let r=i[0],o=Tp().find(a=>n.beat>=a.start-1e-6&&n.beat<a.start+a.beats-1e-6);return c("section",{ref:e,class:"place","aria-label":"What is danced here",onKeyDown:a=>{a.key==="Escape"&&q_()},children:[c("header",{children:[c("p",{children:[o?`Bar ${o.bar}, count ${Math.floor(n.beat-o.start+1e-6)+1} (${an(t,n.beat)}) \xB7 `:"",hn(r?[...new Set(i.map(a=>a.who))]:n.who,Ft.value)]}),c("button",{type:"button",class:"small",onClick:q_,title:"Close (Escape)",children:"Close"})]}),r?c(QE,{block:r,blocks:i},r.path.join("/")):c(KE,{beat:n.beat,who:n.who},`${n.beat} ${n.who.join()}`)]})}function q_(){qn.value=!1,pr.value=!0,document.querySelector(".count.on")?.focus()}function KE({beat:n,who:t}){let e=$t.value,[i,s]=rt(""),[r,o]=rt(jE(n,t)),[a,l]=rt(t),[u,h]=rt([]),d=`new ${n}`,p=new Map(a.map(g=>[g,n+r])),f=()=>{let g={who:Y_(a),from:an(e,n),pattern:i,beats:r},_=u.find(y=>y.name===i)?.shift;_&&(g.shift=_);let v=Cp(d,{beat:n},p),m=`Put: ${i}${v.words}.`;Pp(Lt([...v.operations,{do:"put-block",into:["timeline"],block:g,before:fl(n)}],Rp(v,m)),v,m)};return c("form",{onSubmit:g=>{g.preventDefault(),i&&f()},children:[c(ty,{label:"Put a move",value:i,choose:s,who:a,at:n,near:u,found:h}),c(rC,{label:"For",unit:"beats",value:r,least:1,step:1,set:o}),Ft.value.length>1&&c("fieldset",{children:[c("legend",{children:"Danced by"}),Ft.value.map(g=>c("label",{children:[c("input",{type:"checkbox",checked:a.includes(g),onChange:_=>l(Ft.value.filter(v=>v===g?_.currentTarget.checked:a.includes(v)))})," ",g]},g))]}),c(K_,{of:d,shifts:[Dp({beat:n},p)]}),c("p",{class:"row",children:[c("button",{type:"submit",class:"main",disabled:!i||!a.length,children:"Put it here"}),c("button",{type:"button",disabled:!a.length,onClick:()=>{Lt({do:"put-block",into:["timeline"],before:fl(n),block:{who:Y_(a),from:an(e,n),rest:r}},"Put: a rest.")},children:"Rest here"}),c($m,{beat:n}),mr.value&&c("button",{type:"button",onClick:()=>{Ol(g=>an(e,g),fl)},children:["Paste ",mr.value.words]})]})]})}var Y_=n=>n.length===Ft.value.length&&n.length>1?"all":n.length===1?n[0]:n;function jE(n,t){let e=(ft.value?.blocks??[]).filter(i=>t.includes(i.who)&&i.path!==null&&i.start>n+1e-6).map(i=>i.start);return Math.max(1,Math.min(8,Math.floor(Math.min(...e,1/0)-n)))}function QE({block:n,blocks:t}){let e=$t.value,i=n.entry??n.path,s=n.path[0]==="phrases",[r,o]=rt(!0),a=Q_(n),l=s?a.length:1,u=Ip(n.path)??{},h=n.end-n.start,d=Number(u.repeat??1)||1,p=`${n.path.join("/")} ${n.who}`,f=(y,M,b=[])=>{let E=s&&r&&l>1?{do:"change-here",use:[i],rounds:[Z_(n,a)],operation:y}:y;return Lt(b.length?[...b,E]:E,M)},g=n.path,_=y=>{let M=y-h,b=s&&r&&Z_(n,a)===null?M:s?M*eC(i,n):M,E=Cp(p,{entry:Number(i[1])},Ep(i,b)),A=`${n.title}: ${Sh(y)}${E.words}.`;Pp(f({do:"stretch-block",at:g,beats:y/d},Rp(E,A),E.operations),E,A)},v=async y=>{let M=an(e,nC(i,n)+y),b=Be.value,E=Cp(p,{entry:Number(i[1])},Ep(i,y)),A={do:"move-block",at:i,start:M},x=`Moved to ${M}${E.words}.`;await Pp(Lt(E.operations.length?[...E.operations,A]:A,Rp(E,x)),E,x)&&(Be.value={...b,beat:b.beat+y})},m=Number(n.shift??0);return c(Pt,{children:[c("h3",{children:n.title}),c("ul",{class:"words",children:n.words.filter(y=>y!==n.title).map(y=>c("li",{children:y},y))}),s&&c("fieldset",{children:[c("legend",{children:["The phrase ",n.phrase," is danced ",l===1?"once":`${l} times`,". Change it"]}),l>1&&c("label",{children:[c("input",{type:"radio",name:"where",checked:r,onChange:()=>o(!0)})," here only"]}),c("label",{children:[c("input",{type:"radio",name:"where",checked:!r||l<2,onChange:()=>o(!1)})," ",l>1?"everywhere":"in the phrase"]})]}),"pattern"in u&&c(iC,{block:n,change:f,at:g}),c("div",{class:"steps",children:[c("p",{children:["Starts ",n.position,c("button",{type:"button",onClick:()=>{v(-1)},title:s?"The whole entry moves":"A beat earlier",children:"1 beat earlier"}),c("button",{type:"button",onClick:()=>{v(1)},children:"1 beat later"})]}),c("p",{children:["Lasts ",Sh(h),c("button",{type:"button",disabled:h<=1,onClick:()=>_(h-1),children:"1 beat shorter"}),c("button",{type:"button",onClick:()=>_(h+1),children:"1 beat longer"})]}),c(K_,{of:p,shifts:[1,-1].map(y=>Dp({entry:Number(i[1])},Ep(i,y)))}),"pattern"in u&&c("p",{children:["Begins ",m?`${Sh(m)} in`:"at its start",c("button",{type:"button",onClick:()=>f({do:"change-block",at:g,values:{shift:m-.5||null}},"Shifted."),children:"\xBD beat back"}),c("button",{type:"button",onClick:()=>f({do:"change-block",at:g,values:{shift:m+.5||null}},"Shifted."),children:"\xBD beat on"})]})]}),c("p",{class:"row",children:[c("button",{type:"button",onClick:()=>{Bo(t)},children:"Copy"}),c("button",{type:"button",onClick:()=>{Ul(t)},children:"Cut"}),c("button",{type:"button",onClick:()=>{Mh(t)},children:s?"Delete the entry":"Delete"})]}),c(sC,{entry:i})]})}var Sh=n=>`${Math.round(n*1e3)/1e3} ${Math.abs(n-1)<1e-6?"beat":"beats"}`;function Ip(n){let t=nt.value?.values;for(let e of n)t=t?.[e];return t&&typeof t=="object"?t:null}function K_({of:n,shifts:t}){Vt(()=>{fr.peek()!==n&&(fr.value=null)},[n]);let e=t.map(j_).sort((s,r)=>r.count-s.count)[0],i=e.count?`${tC(e.count)}, up to ${e.until}`:"here nothing has to";return c("label",{class:"along",children:[c("input",{type:"checkbox",checked:fr.value===n,onChange:s=>fr.value=s.currentTarget.checked?n:null})," What follows moves along: ",i]})}var tC=n=>n===1?"1 entry":`${n} entries`;function j_(n){let t=$t.value;return y_(ft.value?.blocks??[],n,e=>an(t,e))}function Dp(n,t){let e=$t.value,i=ft.value;return!e||!i?new Map:v_(i.blocks,n,t,i.sections.map(s=>e.beatAt(s.start)))}function Cp(n,t,e){let i=$t.value,s=ft.value?.blocks,r=fr.value===n?Dp(t,e):new Map;if(!r.size||!i||!s)return{operations:[],words:""};let o=new Map;for(let h of s){if(h.entry?.[0]!=="timeline")continue;let d=Number(h.entry[1]);o.set(d,Math.min(o.get(d)??1/0,h.start))}let a=__(nt.value?.values?.timeline??[],r,h=>o.get(h),h=>an(i,h),h=>Um(i,h)),{count:l,until:u}=j_(r);return{operations:a,words:`, and ${l} that ${l===1?"follows":"follow"}, up to ${u}`}}var Rp=(n,t)=>n.operations.length?void 0:t;async function Pp(n,t,e){let i=await n;return i&&t.operations.length&&ii(e),i}function Ep(n,t){let e=new Map,i=n.join("/");for(let s of ft.value?.blocks??[])s.entry?.join("/")===i&&e.set(s.who,Math.max(e.get(s.who)??-1/0,s.end+t));return e}function eC(n,t){let e=n.join("/");return Q_(t).filter(i=>i.entry?.join("/")===e).length}function nC(n,t){let e=n.join("/"),i=(ft.value?.blocks??[]).filter(s=>s.who===t.who&&s.entry?.join("/")===e&&s.kind!=="link");return Math.min(t.start,...i.map(s=>s.start))}function Q_(n){let t=n.path.join("/");return(ft.value?.blocks??[]).filter(e=>e.who===n.who&&e.path?.join("/")===t).sort((e,i)=>e.start-i.start)}function Z_(n,t){let e=n.entry?.join("/");return Number(Ip(n.entry??[])?.repeat??1)>1?t.filter(s=>s.entry?.join("/")===e).indexOf(n):null}function iC({block:n,change:t,at:e}){let[i,s]=rt(""),[r,o]=rt([]);return c("form",{class:"row",onSubmit:a=>{a.preventDefault(),i&&t({do:"change-block",at:e,values:{pattern:i}},`Now ${i}.`)},children:[c(ty,{label:"Dance another move",value:i,choose:s,who:[n.who],at:n.start,near:r,found:o}),c("button",{type:"submit",disabled:!i,children:"Change"})]})}function sC({entry:n}){let t=Ip(n);if(!t||n[0]!=="timeline"||Ft.value.length<2)return null;let e=t.who==="all"||t.who===void 0?Ft.value:Array.isArray(t.who)?t.who:[t.who],i=t.mirror===void 0?[]:Array.isArray(t.mirror)?t.mirror:[t.mirror],s=t.canon?Number(t.canon):0;return e.length<2?null:c("fieldset",{children:[c("legend",{children:"Together"}),c("p",{children:[s?`a canon, ${Sh(s)} apart`:"all at once",c("button",{type:"button",onClick:()=>{Lt({do:"set-canon",at:n,beats:s+1},"Canon.")},children:s?"1 beat farther apart":"A canon"}),s>0&&c("button",{type:"button",onClick:()=>{Lt({do:"set-unison",at:[n]},"All at once.")},children:"All at once"})]}),c("p",{children:["Mirrored: ",e.map(r=>c("label",{children:[c("input",{type:"checkbox",checked:i.includes(r)||i.includes("all"),onChange:o=>{Lt({do:"set-mirror",at:n,who:e.filter(a=>a===r?o.currentTarget.checked:i.includes(a)||i.includes("all"))},"Mirrored.")}})," ",r]},r))]})]})}function rC({label:n,unit:t,value:e,least:i,step:s,set:r}){return c("label",{class:"stepper",children:[n," ",c("input",{type:"number",min:i,step:s,value:e,onInput:o=>{let a=Number(o.currentTarget.value);a>=i&&r(a)}})," ",t]})}function ty({label:n,value:t,choose:e,who:i,at:s,near:r,found:o}){let[a,l]=rt(-1),[u,h]=rt(!1),d=i.join();Vt(()=>{let v=!0;if(d)return ie(`patterns?who=${encodeURIComponent(d)}&at=${s}`).then(m=>v&&o(m.patterns),()=>{}),()=>{v=!1}},[d,s,nt.value?.revision]);let p=r.length?r:dr.value,f=t.toLowerCase().split(/[\s-]+/).filter(Boolean),g=p.filter(v=>f.every(m=>v.name.includes(m))).slice(0,60),_=u&&!(g.length===1&&g[0].name===t);return c("div",{class:"pattern-field",children:[c("label",{children:[n,c("input",{type:"text",role:"combobox","aria-expanded":_,"aria-controls":"patterns","aria-autocomplete":"list","aria-activedescendant":_&&a>=0?`pattern-${a}`:void 0,autocomplete:"off",spellcheck:!1,value:t,placeholder:"its name, or part of it",onClick:()=>h(!0),onBlur:()=>setTimeout(()=>h(!1),150),onInput:v=>{e(v.currentTarget.value),h(!0),l(-1)},onKeyDown:v=>{v.key==="ArrowDown"||v.key==="ArrowUp"?(v.preventDefault(),h(!0),l((a+(v.key==="ArrowDown"?1:g.length-1)+(a<0&&v.key==="ArrowUp"?1:0))%Math.max(1,g.length))):v.key==="Enter"&&_&&g.length&&(a>=0||g.length===1)?(v.preventDefault(),e(g[Math.max(a,0)].name),h(!1)):v.key==="Escape"&&_&&(v.stopPropagation(),h(!1))}})]}),_&&c("ul",{id:"patterns",role:"listbox","aria-label":"Moves",children:[g.map((v,m)=>c("li",{id:`pattern-${m}`,role:"option","aria-selected":m===a,class:m===a?"on":"",onMouseDown:y=>{y.preventDefault(),e(v.name),h(!1)},children:[c("span",{children:v.name})," ",c("small",{children:v.suits?v.words:"not for these props"})]},v.name)),!g.length&&c("li",{class:"none",role:"option","aria-selected":!1,"aria-disabled":"true",children:"no move has that name"})]})]})}var oC=[["page","Rehearsal page","the show danced, with the song, in one file for any browser"],["counts","Count track","the song with counts and calls, as WAV"],["midi","Cues for light and sound","MIDI"],["captions","Captions","WebVTT, for a video of the rehearsal"],["timetable","Timetable","every change with its time, as CSV and JSON"]],ey=[100,85,70,50];function ny(){let n=xr.value,t=pe(null);if(zo(t,n?.state),!nt.value?.readable)return c("p",{class:"quiet",children:"The file cannot be read as a show: mend it under Text, then it can be printed."});let e=n?.state==="working";return c("div",{ref:t,class:"printing",children:[e&&c(aC,{now:n}),n?.state==="failed"&&c("p",{class:"fault",role:"alert",children:n.error&&In(n.error)}),n?.state==="done"&&n.made&&c(lC,{now:n}),c("div",{class:"printing",hidden:e,children:[c(hC,{}),c(dC,{})]}),c("p",{class:"quiet",hidden:e,children:["What is printed is the show as it stands on this page, saved or not. The files are put into ",n?.folder??"the folder exports beside the show","."]})]})}function aC({now:n}){return c("section",{class:"printing","aria-label":"At work",children:[c("h3",{tabIndex:-1,children:n.asked?.what==="rehearsal"?"Making what you rehearse with":"Printing the sheets"}),c(Vo,{now:n}),c("p",{class:"row",children:c("button",{type:"button",onClick:()=>{yn("print/stop")},children:"Give it up"})}),c("p",{class:"quiet",children:"You can go on planning meanwhile: what you change now is not in these files."})]})}function lC({now:n}){let{files:t,ok:e,said:i,older:s}=n.made;return c("section",{class:"made","aria-label":"What was made",children:[c("h3",{tabIndex:-1,children:"Ready"}),e===!1&&c("p",{class:"fault",children:["Do not dance this yet: ",c("button",{type:"button",class:"small",onClick:()=>Kt.value="findings",children:"Findings"})," says why, and so does every sheet."]}),e===null&&c("p",{class:"caution",children:"Nothing was checked for these: Findings says whether the show can be danced."}),s&&c("p",{class:"caution",children:"The show has changed since: these files show it as it was before."}),n.unsaved&&c("p",{class:"quiet",children:"Made from the show as it stood on this page; it was not saved then."}),c("ul",{children:t.map(r=>c("li",{children:[cC(r)?c("a",{href:r.address,target:"_blank",rel:"noopener",children:r.name}):c("span",{children:r.name}),c("small",{children:uC(r.bytes)}),c("a",{class:"save",href:`${r.address}?save`,download:r.name,"aria-label":`Download ${r.name}`,children:"Download"})]},r.name))}),i.map(r=>c("p",{class:"quiet",children:br(r)},r)),c("p",{class:"quiet",children:["They lie in ",n.folder,"."]})]})}var cC=n=>/\.(pdf|html|wav)$/.test(n.name),uC=n=>n<1e6?`${Math.max(1,Math.round(n/1e3))} kB`:`${(n/1e6).toFixed(1)} MB`;function hC(){let[n,t]=rt([]),[e,i]=rt("pack"),[s,r]=rt([]),[o,a]=rt([]),[l,u]=rt("a4"),[h,d]=rt("");Vt(()=>{ie("printable").then(g=>t(g.kinds),()=>{})},[]);let p=e==="some"&&!s.length&&!o.length,f=()=>{yn("sheets",{everything:e==="all",only:e==="some"?s:[],people:e==="some"?o:[],paper:l,since:h.trim()||null})};return c("form",{class:"printed",onSubmit:g=>{g.preventDefault(),p||f()},children:[c("h3",{tabIndex:-1,children:"Sheets to print"}),c("fieldset",{children:[c("legend",{children:"Which"}),c("label",{children:[c("input",{type:"radio",name:"which",checked:e==="pack",onChange:()=>i("pack")})," what is carried on the night"]}),c("label",{children:[c("input",{type:"radio",name:"which",checked:e==="all",onChange:()=>i("all")})," everything"]}),c("label",{children:[c("input",{type:"radio",name:"which",checked:e==="some",onChange:()=>i("some")})," what I choose"]})]}),e==="some"&&c(Pt,{children:[c("fieldset",{class:"kinds",children:[c("legend",{children:"Kinds (none: every kind)"}),!n.length&&c("span",{class:"quiet",children:"The kinds are being listed \u2026"}),n.map(g=>c("label",{children:[c("input",{type:"checkbox",checked:s.includes(g.name),onChange:_=>r(Lp(s,g.name,_.currentTarget.checked))})," ",c("span",{children:[c("b",{children:g.name.replaceAll("-"," ")}),", for ",g.reader,c("small",{children:g.holds})]})]},g.name))]}),c(iy,{legend:"For whom (none chosen: everybody)",chosen:o,choose:a,crew:!0})]}),c("p",{class:"row",children:[c("label",{children:["Paper ",c("select",{value:l,onChange:g=>u(g.currentTarget.value),children:[c("option",{value:"a4",children:"A4"}),c("option",{value:"letter",children:"Letter"})]})]}),c("label",{children:["Mark what has changed since ",c("input",{type:"text",value:h,placeholder:"an earlier show file, beside this one",onInput:g=>d(g.currentTarget.value)})]})]}),c("p",{class:"row",children:c("button",{type:"submit",class:"main",disabled:p,children:"Make the sheets"})})]})}function dC(){let[n,t]=rt(["page","counts"]),[e,i]=rt([100]),[s,r]=rt("pitched"),[o,a]=rt([]),[l,u]=rt(!1),[h,d]=rt(!0),[p,f]=rt(!1),g=n.includes("counts"),_=n.length>0&&(!g||e.length>0),v=()=>{yn("rehearsal",{parts:n,speeds:(g?e:[100]).map(m=>m/100),counts:s,people:o,clicks_only:l,no_calls:!h,split:p})};return c("form",{class:"printed",onSubmit:m=>{m.preventDefault(),_&&v()},children:[c("h3",{children:"To rehearse with, and for other programs"}),c("fieldset",{class:"kinds",children:[c("legend",{children:"What"}),oC.map(([m,y,M])=>c("label",{children:[c("input",{type:"checkbox",checked:n.includes(m),onChange:b=>t(Lp(n,m,b.currentTarget.checked))})," ",c("span",{children:[c("b",{children:y}),c("small",{children:M})]})]},m))]}),g&&c("details",{children:[c("summary",{children:"How the count track sounds"}),c("fieldset",{children:[c("legend",{children:"Speeds, at the same pitch"}),ey.map(m=>c("label",{children:[c("input",{type:"checkbox",checked:e.includes(m),onChange:y=>i(ey.filter(M=>M===m?y.currentTarget.checked:e.includes(M)))})," ",m," %"]},m))]}),c("p",{class:"row",children:c("label",{children:["The last four beats before a change are ",c("select",{value:s,onChange:m=>r(m.currentTarget.value),children:[c("option",{value:"pitched",children:"pitched clicks"}),c("option",{value:"spoken",children:"spoken"}),c("option",{value:"none",children:"not counted"})]})]})}),c("fieldset",{children:[c("legend",{children:"In it"}),c("label",{children:[c("input",{type:"checkbox",checked:!l,onChange:m=>u(!m.currentTarget.checked)})," the song"]}),c("label",{children:[c("input",{type:"checkbox",checked:h,onChange:m=>d(m.currentTarget.checked)})," three notes before each section"]}),c("label",{children:[c("input",{type:"checkbox",checked:p,onChange:m=>f(m.currentTarget.checked)})," song left, counts right"]})]}),c(iy,{legend:"Whose changes are counted (none chosen: everybody's)",chosen:o,choose:a})]}),c("p",{class:"row",children:c("button",{type:"submit",class:"main",disabled:!_,children:"Make these"})})]})}function iy({legend:n,chosen:t,choose:e,crew:i=!1}){let s=nt.value?.values,r=[...s?.cast??[],...i?s?.crew??[]:[]].map(o=>o.name).filter(Boolean);return c("fieldset",{children:[c("legend",{children:n}),r.map(o=>c("label",{children:[c("input",{type:"checkbox",checked:t.includes(o),onChange:a=>e(Lp(t,o,a.currentTarget.checked))})," ",o]},o))]})}var Lp=(n,t,e)=>e?[...n.filter(i=>i!==t),t]:n.filter(i=>i!==t);function sy(){Vt(()=>{ie("share").then(i=>ko.value=i,()=>{})},[]);let[n,t]=rt(!1),e=ko.value;return!e||e.over?null:c("aside",{class:"shared","aria-label":"The show is shared",children:[c("p",{children:[c("b",{children:"Shared with the network"})," at ",c("span",{class:"copy",children:e.address}),", code ",c("span",{class:"copy",children:e.code})]}),c("p",{role:"status",children:e.watching===0?"no page watches":e.watching===1?"1 page watches":`${e.watching} pages watch`}),e.shut&&c("p",{class:"fault",children:"Wrong codes came too often: nobody can join any more until it is shared anew."}),c("details",{children:[c("summary",{children:"What that exposes"}),c("p",{children:["Whoever has the code sees ",e.exposed,"; nobody can change anything. Nothing is encrypted: others on this network may read along. It ends with this program."]})]}),n?c("p",{class:"fault",role:"alert",children:["Everybody who watches is sent away, and the code is good no longer. ",c("button",{type:"button",class:"small",onClick:()=>{si(()=>ge("unshare",{}),"It is shared no longer.")},children:"Stop it now"})," ",c("button",{type:"button",class:"small",onClick:()=>t(!1),children:"Go on sharing"})]}):c("button",{type:"button",class:"small",onClick:()=>t(!0),children:"Stop sharing"})]})}function ry(){let n=nt.value,t=pe(null);return Vt(()=>t.current?.focus(),[]),c(Pt,{children:[c("header",{class:"top",children:[c("h1",{children:n.file}),c("p",{class:"file",children:Dn.value?"not connected":n.saved?"empty on disk too":"the file on disk is as it was last saved"}),c("div",{class:"tools",children:[c("button",{type:"button",disabled:!n.undo,onClick:()=>{_r()},title:n.undo?`Take back: ${n.undo} (Ctrl + Z)`:"Nothing to take back",children:"Undo"}),c("button",{type:"button",class:n.redo?"main":"",disabled:!n.redo,onClick:()=>{Us()},title:n.redo?`Do again: ${n.redo} (Ctrl + Y)`:"Nothing to do again",children:"Redo"}),!n.redo&&!n.undo&&c("button",{type:"button",disabled:n.saved,onClick:()=>{yr()},children:"Save"})]})]}),c("main",{class:"beginning",children:[c("h2",{ref:t,tabIndex:-1,children:"Nothing is left of this show here"}),c("p",{children:n.redo?`Everything was undone, also the beginning. Redo brings the show back, step by step; the first is: ${n.redo}.`:n.undo?`Its whole text was taken out. Undo brings it back: ${n.undo}.`:"The file on disk is gone or says something else. Save makes it empty, and then a show can be begun in it."}),!n.saved&&c("p",{children:"What was saved is still on disk, untouched."}),c("p",{class:"quiet",children:"To begin another show, open a file of another name."})]})]})}var fC=["line","wedge","diamond","circle","box","stagger","face to face","back to back"],Np="as they stand now",pC=8;function oy({standing:n}){let e=ft.value.formations[n.formation],i=(nt.value?.values?.staging??[]).filter(s=>s.formation===n.formation).length;return c(Pt,{children:[c(mC,{standing:n}),c("fieldset",{children:[c("legend",{children:["The formation ",n.formation]}),e&&c(or,{label:"Its name",value:n.formation,put:s=>Lt({do:"rename-formation",old:n.formation,new:s},`Now called ${s}.`)},n.formation),e?.shape&&c("p",{children:["It is a ",e.shape,": nobody has a spot of their own. ",c("button",{type:"button",class:"small",onClick:()=>{Lt({do:"set-formation",name:n.formation,formation:{spots:ay(n.spots)}},"Everybody has a spot of their own.")},children:"Give everybody their own spot"})]}),c("p",{class:"quiet",children:i===1?"It is taken once.":`It is taken ${i} times: all change with it.`})]}),c(vC,{})]})}function ay(n){return Object.fromEntries(Object.entries(n).map(([t,[e,i,s]])=>[t,{at:[Th(e),Th(i)],...s?{facing:Th(s)}:{}}]))}var Th=n=>Math.round(n*100)/100;function mC({standing:n}){let t=Object.keys(ft.value.formations),[e,i]=rt(""),[s,r]=rt(""),[o,a]=rt(Np),[l,u]=rt(pC),h=yh(Ue.value),d=nt.value?.values?.staging??[],p=ft.value.standings.find(m=>m.path[0]==="staging"&&m.walk>h.beat+1e-6),f=p?Number(p.path[1]):null,g=e==="",_=t.includes(s.trim()),v=async()=>{let m=g?[{do:"set-formation",name:s.trim(),formation:o===Np?{spots:ay(n.spots)}:gC(o,n)}]:[],y=!d.length,M={do:"put-walk",formation:g?s.trim():e,start:h.words,...y?{}:{beats:l},before:f};await Lt([...m,M],`${g?s.trim():e} is taken from ${h.words}.`)&&(r(""),Ei.value=y?null:f??d.length)};return c("fieldset",{class:"take",children:[c("legend",{children:["Take a formation from ",h.words," on"]}),c("label",{children:["Which ",c("select",{value:e,onChange:m=>i(m.currentTarget.value),children:[c("option",{value:"",children:"a new one"}),t.map(m=>c("option",{value:m,children:m},m))]})]}),g&&c(Pt,{children:[c("label",{children:["Its name ",c("input",{type:"text",value:s,placeholder:"gate",onInput:m=>r(m.currentTarget.value)})]}),c("label",{children:["How ",c("select",{value:o,onChange:m=>a(m.currentTarget.value),children:[c("option",{children:Np}),fC.map(m=>c("option",{children:m},m))]})]})]}),d.length>0&&c("label",{class:"stepper",children:["They walk for ",c("input",{type:"number",min:1,step:1,value:l,onInput:m=>{let y=Number(m.currentTarget.value);y>=1&&u(y)}})," beats"]}),g&&_&&c("p",{class:"quiet",children:["There is a formation ",s.trim()," already: choose it above, or another name."]}),c("p",{class:"row",children:c("button",{type:"button",class:"main",disabled:g&&(!s.trim()||_),onClick:()=>{v()},children:["Take it from ",h.words]})})]})}function gC(n,t){let e=Object.values(t.spots),i=r=>Th(e.reduce((o,a)=>o+a[r],0)/Math.max(1,e.length)),s=e.flatMap((r,o)=>e.slice(o+1).map(a=>Math.hypot(r[0]-a[0],r[1]-a[1])));return{shape:n,centre:[i(0),i(1)],spacing:`${s.length?Math.max(2,Math.round(Math.min(...s)*10)/10):3} m`}}function vC(){let n=nt.value?.values?.staging??[],t=Object.keys(nt.value?.values?.formations??{}).filter(e=>!n.some(i=>i.formation===e));return!t.length||!$t.value?null:c("fieldset",{children:[c("legend",{children:"Never taken"}),t.map(e=>c("p",{children:[e," ",c("button",{type:"button",class:"small",onClick:()=>{Lt({do:"delete-formation",name:e},`${e} is deleted.`)},children:["Delete",c("span",{class:"unseen",children:[" the formation ",e]})]})]},e))]})}function ly(){let n=ft.value,t=$t.value,e=pe(null);if(!n||!t)return c("p",{class:"quiet",children:"There is no stage to show yet."});let i=I_(n,t.beatAt(Ue.value));if(!i)return c("p",{class:"quiet",children:"The file says nothing about where anybody stands."});let s=P_(n),r={at:(h,d)=>[h-s.x0,s.y1-d],place:h=>{let d=new DOMPoint(h.clientX,h.clientY).matrixTransform(e.current.getScreenCTM().inverse());return[Es(d.x+s.x0),Es(s.y1-d.y)]},hold:h=>e.current.setPointerCapture(h)},o=h=>h.map(([d,p])=>r.at(d,p).map(f=>f.toFixed(2)).join(",")).join(" "),a=Ft.value.flatMap(h=>{let d=i.spots[h];return d?[[h,[...ul(Ah(i,h),[d[0],d[1]]),d[2]]]]:[]}),l=sn.value,u=n.formations[i.formation]?.used.length??0;return c(Pt,{children:[c("figure",{class:"plan",children:[c("figcaption",{children:[c("b",{children:i.formation}),", from ",i.position,i.waiting.length>0&&`; in the wings: ${i.waiting.join(", ")}`,u>1&&` (used ${u} times: a change here changes it each time)`]}),c("svg",{ref:e,viewBox:`0 0 ${(s.x1-s.x0).toFixed(2)} ${(s.y1-s.y0).toFixed(2)}`,role:"group","aria-label":`The stage from above, ${i.formation}; the audience is below`,onPointerMove:h=>l&&C_(r.place(h)),onPointerUp:R_,onPointerCancel:()=>sn.value=null,children:[c("polygon",{class:"floor",points:o(n.place.outline)}),n.place.holes.map((h,d)=>c("polygon",{class:"hole",points:o(h)},d)),n.place.audience.map(h=>c("polyline",{class:"audience",points:o(h.line)},h.name)),n.place.scenery.map(h=>c("polygon",{class:"thing",points:o(h.outline),children:c("title",{children:h.name})},h.name)),c(yC,{plan:r,spots:a.map(([,[h,d]])=>[h,d])}),c(_h,{plan:r,lines:D_(a,n)}),c(L_,{plan:r}),a.map(([h,d])=>c(_C,{name:h,spot:d,standing:i,plan:r},h)),c(xC,{plan:r})]}),c("p",{class:"quiet",children:l?`${l.words}: ${l.at[0].toFixed(2)} m across, ${l.at[1].toFixed(2)} m upstage. Distances are as drawn; the checks look at every moment when you let go.`:"Thin circles: how far body, prop and flame reach. The audience is below. Open squares: crew by their first letter; full ones: E an extinguisher, F the fuel."})]}),!Ln.value&&c(O_,{}),!Ln.value&&c(V_,{}),!Ln.value&&c(oy,{standing:i})]})}var Ah=(n,t)=>`spot ${n.formation} ${t}`;function _C({name:n,spot:[t,e,i],standing:s,plan:r}){let[o,a]=r.at(t,e),l=i*Math.PI/180,u=s.waiting.includes(n),h=d=>u?bo(Ah(s,n),d,()=>z_(n,s,d),`${n} waits in the wings at ${d[0]}, ${d[1]}.`):bo(Ah(s,n),d,()=>({do:"move-spot",formation:s.formation,who:n,at:d}),`${n} stands at ${d[0]}, ${d[1]} in ${s.formation}.`);return c("g",{class:u?"spot waits":"spot",children:[c("circle",{class:"reach",cx:o,cy:a,r:ft.value.reach[n]??1}),c("line",{class:"facing",x1:o,y1:a,x2:o+.55*Math.sin(l),y2:a+.55*Math.cos(l)}),c(hl,{id:Ah(s,n),plan:r,at:[t,e],words:u?`${n}, in the wings`:n,put:h,shape:"circle",size:.34,class:"body"}),c("text",{x:o,y:a+.95,children:n})]})}function yC({plan:n,spots:t}){let e=ft.value;return c(Pt,{children:[e.place.extinguishers.map((i,s)=>c(Up,{id:`extinguisher ${s}`,plan:n,spots:t,given:i,thing:!0,sign:"E",words:`Extinguisher ${s+1}`,said:"An extinguisher",operation:r=>({do:"change-item",into:"extinguishers",number:s,values:{at:r}})},`e${s}`)),e.place.fuel&&c(Up,{id:"fuel",plan:n,spots:t,given:e.place.fuel,thing:!0,sign:"F",words:"Fuel",said:"The fuel",operation:i=>({do:"change-heading",heading:"venue",values:{fuel_station:i}})}),e.crew.map(i=>c(Up,{id:`crew ${i.name}`,plan:n,spots:t,given:i.at,sign:[...i.name][0],words:`${i.name}, ${i.duty}`,said:i.name,operation:s=>({do:"change-person",group:"crew",name:i.name,values:{post:s}})},i.name))]})}function Up({id:n,plan:t,spots:e,given:i,sign:s,words:r,said:o,operation:a,thing:l=!1}){let u=ul(n,i),[h,d]=t.at(...u);return c("g",{class:l?"mark thing-mark":"mark",children:[sn.value?.key===n&&c(_h,{plan:t,lines:gh(u,e,2)}),c(hl,{id:n,plan:t,at:u,words:r,put:p=>bo(n,p,()=>a(p),`${o} is at ${p[0]}, ${p[1]}.`),shape:"square",size:.28,class:"post",children:[c("title",{children:r}),c("text",{x:h,y:d+.16,children:s})]})]})}function xC({plan:n}){return c("g",{class:"moves","aria-hidden":"true",children:vo.value.map((t,e)=>{let[i,s]=n.at(...t.before),[r,o]=n.at(...t.after),a=Math.hypot(t.after[0]-t.before[0],t.after[1]-t.before[1]);return c("g",{children:[c("circle",{cx:i,cy:s,r:.34}),c("line",{x1:i,y1:s,x2:r,y2:o}),c("text",{x:i,y:s-.45,children:["was here, ",a.toFixed(2)," m"]})]},e)})})}var uy=/\r\n|[\n\r\v\f\x1c-\x1e\x85\u2028\u2029]/;function Op(){let n=nt.value,t=pe(null);if(Vt(()=>t.current?.showModal(),[n?.outside!==null]),!n?.outside)return null;let e=i=>{si(()=>ge("outside",{take:i}),i==="mine"?"Yours is kept.":"The other one is taken.")};return c("dialog",{ref:t,class:"outside","aria-label":"The file was changed elsewhere",onCancel:i=>i.preventDefault(),children:[c("h2",{children:"The file was changed elsewhere"}),c("p",{children:n.outside.message}),c(bC,{conflicts:n.outside.conflicts}),c(wC,{here:n.text,there:n.outside.text,lines:n.outside.lines,first:SC(n.outside.lines,n.outside.conflicts),settle:e}),c("p",{class:"quiet",children:"Neither is lost: what is not kept can be had back with Undo."})]})}function bC({conflicts:n}){if(!n.length)return c("p",{children:"The two do not go together. The lines in which they differ are marked below."});let t=e=>e===null?c("em",{children:"taken out"}):c("code",{children:e});return c("div",{class:"places",tabIndex:0,role:"region","aria-label":"Changed on both sides",children:c("table",{children:[c("thead",{children:c("tr",{children:[c("th",{scope:"col",children:"Place"}),c("th",{scope:"col",children:"Here"}),c("th",{scope:"col",children:"In the file"})]})}),c("tbody",{children:n.map((e,i)=>c("tr",{children:[c("th",{scope:"row",children:[e.place,c("small",{children:e.why})]}),e.path.length?c(Pt,{children:[c("td",{children:t(e.ours)}),c("td",{children:t(e.theirs)})]}):c("td",{colSpan:2,children:"the whole file"})]},i))})]})})}function wC({here:n,there:t,lines:e,first:i,settle:s}){let[r,o]=rt(i),a=pe(null),l=MC(e),u=Math.min(r,Math.max(e.length-1,0));Vt(()=>o(i),[n,t]),Vt(()=>a.current?.querySelectorAll(`[data-place="${u}"]`).forEach(p=>{let f=p.closest("pre");f.scrollTop=p.offsetTop-f.clientHeight/3}),[u,n,t]);let h=p=>o((u+p+e.length)%e.length),d=(p,f)=>p.length?`line ${f}: ${p.map(g=>g.trim()).join(" / ")}`:"nothing";return c(Pt,{children:[e.length>0&&c("p",{class:"row",role:"group","aria-label":"From difference to difference",children:[c("button",{type:"button",class:"small",disabled:e.length<2,onClick:()=>h(-1),children:"Previous difference"}),c("button",{type:"button",class:"small",disabled:e.length<2,onClick:()=>h(1),children:"Next difference"}),c("span",{role:"status",children:[u+1," of ",e.length,c("span",{class:"unseen",children:[". Here ",d(e[u].out,e[u].line),". In the file ",d(e[u].in,l[u]),"."]})]})]}),c("div",{class:"both",ref:a,children:[c("div",{children:[c("h3",{children:"Here"}),c(cy,{text:n,places:e.map(p=>[p.line,p.out.length]),at:u,label:"The text here"}),c("button",{type:"button",class:"main",onClick:()=>s("mine"),children:"Keep this one"})]}),c("div",{children:[c("h3",{children:"In the file"}),c(cy,{text:t,places:e.map((p,f)=>[l[f],p.in.length]),at:u,label:"The text in the file"}),c("button",{type:"button",onClick:()=>s("theirs"),children:"Take this one"})]})]})]})}function cy({text:n,places:t,at:e,label:i}){let s=n.split(uy),r=[],o=0;return t.forEach(([a,l],u)=>{r.push(s.slice(o,a-1).map(p=>`${p}
`).join(""));let h=s.slice(a-1,a-1+l).join(`
`),d=u===e?"on":"";r.push(l?c("mark",{class:d,"data-place":u,children:[h,`
`]},u):c("span",{class:`none ${d}`,"data-place":u},u)),o=a-1+l}),r.push(s.slice(o).join(`
`)),c("pre",{tabIndex:0,role:"region","aria-label":i,children:r})}function MC(n){let t=0;return n.map(e=>{let i=e.line+t;return t+=e.in.length-e.out.length,i})}function SC(n,t){let e=[t[0]?.ours,t[0]?.theirs].flatMap(i=>i?.split(uy)[0].trim()||[]);return Math.max(0,n.findIndex(i=>[...i.out,...i.in].some(s=>e.some(r=>s.includes(r)))))}function hy(){let n=nt.value,t=n.text.includes(`\r
`),e=n.text.replaceAll(`\r
`,`
`),{text:i,based:s,revision:r}=Ns.value??{text:e,based:e,revision:n.revision},o=d=>Ns.value=d===s?null:{text:d,based:s,revision:r},a=pe(null),l=i!==s,u=s!==e,h=(d,p)=>{let g=i.split(`
`).slice(0,d-1).reduce((_,v)=>_+v.length+1,0)+p-1;a.current?.focus(),a.current?.setSelectionRange(g,g+1)};return c("div",{class:"text",children:[n.faults.map(d=>c("p",{class:"fault",children:[In(d)," ",d.line!==null&&c("button",{type:"button",class:"small",onClick:()=>h(d.line,d.column??1),children:["Go to line ",d.line]})]},d.message)),c("textarea",{ref:a,spellcheck:!1,"aria-label":`The text of ${n.file}`,value:i,onInput:d=>o(d.currentTarget.value)}),u&&l&&c("p",{class:"fault",children:"The show was changed since you began to type: both changes are put together if they touch different places."}),c("p",{class:"row",children:[c("button",{type:"button",class:"main",disabled:!l,onClick:()=>{Lt({do:"replace-text",text:t?i.replaceAll(`
`,`\r
`):i},"The text is taken.",r).then(d=>d&&(Ns.value=null))},children:"Take this text"}),c("button",{type:"button",disabled:!l,onClick:()=>Ns.value=null,children:"Back to the show's"})]})]})}function dy(){let[n,t]=rt(null),e=ft.value?.revision;if(Vt(()=>{let r=!0;return ie("cues").then(o=>r&&t(o.cues),()=>{}),()=>{r=!1}},[e]),!n)return c("p",{class:"quiet",children:"The cues are being put together \u2026"});let i=n.findIndex(r=>r.seconds>Ue.value+.01),s=i<0?n.length:i;return c("table",{class:Li.value?"cues":"cues older",children:[c("thead",{children:c("tr",{children:[c("th",{scope:"col",children:"time"}),c("th",{scope:"col",children:"count"}),c("th",{scope:"col",children:"cue"}),c("th",{scope:"col",children:"for"})]})}),c("tbody",{children:n.map((r,o)=>c("tr",{class:o===s-1?"cue-now":`cue-${r.kind}`,children:[c("td",{children:c("button",{type:"button",class:"small",onClick:()=>Nn(r.seconds),children:[Er(r.seconds),c("span",{class:"unseen",children:[", ",r.what]})]})}),c("td",{children:r.position}),c("td",{children:r.what}),c("td",{children:{both:"sound and light"}[r.who]??r.who})]},o))})]})}var wo=n=>n==null?[]:[n].flat().map(String);function fy(){let n=nt.value?.values,t=ft.value;if(!n||!t)return c("p",{class:"quiet",children:n===null?"The file cannot be read: mend it under Text.":"The show is being put on its song \u2026"});let e=wo(n.tonight?.away),i=n.tonight?.stand_ins??[],s=n.cast??[],r=n.crew??[],o=l=>e.includes(l)?"away":i.some(u=>u.for===l)?"other":"here",a=(l,u)=>c(TC,{name:l.name,group:u,where:o(l.name),standIn:i.find(h=>h.for===l.name),stature:l.stature,children:u==="cast"?c(EC,{name:l.name,timeline:n.timeline??[],everybody:s.map(h=>h.name)}):c("li",{children:[l.duty??"spotter",wo(l.watches).length?`, watches ${wo(l.watches).join(", ")}`:""]})},l.name);return c("div",{class:"who",children:[c("p",{class:"quiet",children:"For tonight only: the show stays as it is written, and everybody who is there keeps their counts and spots. Everything is looked at again without those who are away, and with the bodies of those who stand in."}),(e.length>0||i.length>0)&&c("p",{class:"row",children:c("button",{type:"button",onClick:()=>{Lt({do:"set-there"},"Everybody is there.")},children:"Everybody is there"})}),c("h3",{children:"Cast"}),s.map(l=>a(l,"cast")),r.length>0&&c("h3",{children:"Crew"}),r.map(l=>a(l,"crew")),c("h3",{children:"Run cues"}),c("p",{class:"quiet",children:"What sound and light do, and when: as their sheet prints it. A time leads there in the song. Who comes on and goes off is put in under Stage."}),c(dy,{})]})}function TC({name:n,group:t,where:e,standIn:i,stature:s,children:r}){let[o,a]=rt(e);Vt(()=>a(e),[e]);let l=async h=>{if(a(h),h==="other"||h===e)return;await Lt(h==="away"?{do:"set-away",name:n}:{do:"set-there",name:n},h==="away"?`${n} is away tonight.`:`${n} is there.`)||a(e)},u=[["here","is here"],["away","is away"],["other","has a stand-in"]];return c("section",{class:`person ${e}`,"aria-label":n,children:[c("h4",{children:[n,e==="other"&&i?c("small",{children:[" tonight ",i.name]}):""]}),c("div",{class:"choice",role:"radiogroup","aria-label":`${n} tonight`,children:u.map(([h,d])=>c("label",{children:[c("input",{type:"radio",name:`tonight ${t} ${n}`,checked:o===h,onChange:()=>{l(h)}})," ",d]},h))}),o==="other"&&c(AC,{part:n,group:t,known:i,stature:s}),c("ul",{class:"words",children:r})]})}function AC({part:n,group:t,known:e,stature:i}){let[s,r]=rt(String(e?.name??"")),[o,a]=rt(String(e?.stature??"")),[l,u]=rt(String(e?.birth_year??"")),h=()=>{let{for:d,...p}=e&&e.name===s.trim()?e:{},f={...p,name:s.trim()};t==="cast"&&Object.assign(f,{stature:o.trim()},l.trim()?{birth_year:Number(l)}:{}),Lt({do:"set-stand-in",part:n,person:f},`${s} takes the part of ${n} tonight.`)};return c("form",{class:"row",onSubmit:d=>{d.preventDefault(),h()},children:[c("label",{children:["Who takes the ",t==="cast"?"part":"post"," ",c("input",{type:"text",required:!0,value:s,onInput:d=>r(d.currentTarget.value)})]}),t==="cast"&&c("label",{children:["Height ",c("input",{type:"text",required:!0,value:o,placeholder:String(i??"1.70 m"),onInput:d=>a(d.currentTarget.value)})]}),t==="cast"&&c("label",{children:["Born in ",c("input",{type:"text",inputMode:"numeric",pattern:"[0-9]{4}",title:"a year, such as 1994: rules set a minimum age",value:l,onInput:d=>u(d.currentTarget.value)})]}),c("button",{type:"submit",disabled:!s.trim()||t==="cast"&&!o.trim(),children:e?"Change":"Takes it tonight"})]})}function EC({name:n,timeline:t,everybody:e}){let i=(gr.value.get(n)??[]).filter(u=>u.path!==null&&u.kind!=="link"),s=ft.value.missing.filter(u=>u.who===n),r=ft.value.cast.find(u=>u.name===n)?.lit??[],o=t.filter(u=>u.canon&&(wo(u.who).length===0||wo(u.who).includes("all")?e:wo(u.who))[0]===n),a=ft.value.entrances.filter(u=>u.who===n);if(s.length)return c("li",{children:["falls out: ",s.length," blocks, from ",s[0].position," to ",s[s.length-1].end_position]});let l=a.map(u=>c("li",{children:[u.words," at ",u.position]},u.start));return i.length?c(Pt,{children:[l,c("li",{children:["comes in at ",i[0].position," (",i[0].title,"), ends at ",i[i.length-1].end_position]}),o.length>0&&c("li",{children:["begins ",o.length===1?"a canon":`${o.length} canons`,": ",o.map(u=>u.phrase??u.pattern??(u.link?"a link":"a rest")).join(", ")]}),r.length>0&&c("li",{children:["lit ",r.length===1?"once":`${r.length} times`]})]}):c(Pt,{children:[l,c("li",{children:"dances nothing yet"})]})}var pl=Mt(null),Eh=Mt(!1),Mo=[["The sheet","Your song stands here in eights, as on a count sheet. A bar across the counts is a move, a hatched one the link to the next. Click a count, or walk there with the arrow keys and press Enter, to put a move or to change the one that is there.",".left"],["A routine to begin with","Under Draft you get a proposal: moves that everybody can dance at this tempo, checked as a whole. You see it before it goes into the show, and one Undo takes it out again.","#tab-draft"],["Hear it, see it","The space bar plays the song. Under Dance the show is danced; under Stage you drag everybody to where they stand.",".transport"],["What stands against it","After every change the show is looked at anew: reach, distances, walks, fire. The answer stands up here, each finding beside its row and under Findings, often with a mend to try.",".verdict"],["Save and print","Nothing that you do is lost, and Undo goes back to the beginning. Save writes the file. Under Print are the sheets for the night and the page to rehearse with.",".tools"]];async function gy(){let{seen:n}=await ie("tour");n||(pl.value=0)}function vy(){Eh.value=!0,pl.value=0}function py(){pl.value=null,ge("tour",{}).catch(()=>{}),Eh.value&&document.getElementById("call-tour")?.focus()}function my(n){Eh.value=!0,pl.value=n}function _y(){let n=pl.value,t=pe(null);if(Vt(()=>{if(n===null)return;let s=document.querySelector(Mo[n][2]);return s?.classList.add("toured"),Eh.value&&t.current?.focus(),()=>s?.classList.remove("toured")},[n]),n===null)return null;let[e,i]=Mo[n];return c("section",{class:"tour","aria-labelledby":"tour-title",onKeyDown:s=>{s.key==="Escape"&&py()},children:[c("div",{children:[c("h2",{id:"tour-title",ref:t,tabIndex:-1,"aria-describedby":"tour-words",children:[e," ",c("small",{children:[n+1," of ",Mo.length]})]}),c("p",{id:"tour-words",children:i})]}),c("p",{class:"row",children:[n>0&&c("button",{type:"button",onClick:()=>my(n-1),children:"Back"}),n<Mo.length-1&&c("button",{type:"button",class:"main",onClick:()=>my(n+1),children:"Next"}),c("button",{type:"button",class:n===Mo.length-1?"main":"",onClick:py,children:n===Mo.length-1?"Done":n?"End the tour":"No tour"})]})]})}function yy(){let n=nt.value;return c("header",{class:"top",children:[c("h1",{children:ft.value?.title??n?.file??"\u2026"}),c("p",{class:"file",children:n?`${n.file} \xB7 ${n.saved?"saved":"not saved yet"}${CC(n.values)}`:""}),c(RC,{}),c("div",{class:"tools",children:[c("button",{type:"button",disabled:!n?.undo,onClick:()=>{_r()},title:n?.undo?`Take back: ${n.undo} (Ctrl + Z)`:"Nothing to take back",children:"Undo"}),c("button",{type:"button",disabled:!n?.redo,onClick:()=>{Us()},title:n?.redo?`Do again: ${n.redo} (Ctrl + Y)`:"Nothing to do again",children:"Redo"}),c("button",{type:"button",class:n&&!n.saved?"main":"",disabled:!n||n.saved,onClick:()=>{yr()},title:"Write the file (Ctrl + S)",children:"Save"}),c("button",{type:"button",id:"call-tour",onClick:vy,children:"Tour"})]}),c("p",{class:"unseen",role:"status","aria-live":"polite",children:xe.value})]})}function CC(n){let t=[n?.tonight?.away??[]].flat(),i=[...(n?.tonight?.stand_ins??[]).map(s=>`${s.name} for ${s.for}`),...t.length?[`without ${t.join(", ")}`]:[]];return i.length?` \xB7 tonight ${i.join(", ")}`:""}function RC(){let n=nt.value,t=Ii.value,e=ei.value;if(!n)return c("p",{class:"verdict",children:"opening \u2026"});if(Dn.value||Uo.value)return c("p",{class:"verdict",children:"Not connected: what stands against it is not known"});if(!n.readable)return c("p",{class:"verdict stop",children:Ln.value?"There is no show to look at now: wait until whoever shares it has mended it":"The file cannot be read: see Text"});if(ni.value)return c("p",{class:"verdict stop",title:ni.value,children:"Cannot be danced as it is written"});let i=t!==null&&t.revision===n.revision&&!Oo.value;if(i&&t.error)return c("p",{class:"verdict stop",title:t.error.message,children:["A check broke off: ",In(t.error)]});let s=t?.counts??{stop:0,warn:0,note:0},r=i?t.open?.length??null:null,o=[s.stop?`${s.stop} stop`:"",s.warn?`${s.warn} warn`:""].filter(Boolean).join(", "),a=i&&r===1&&t.open?.[0]==="mends";if(!a&&(!i||r!==0||!t.complete||e?.revision!==n.revision))return c("p",{class:"verdict looking",children:[i&&t.hearing?"hearing the song":r===null?"looking again":`looking: ${r} ${r===1?"check":"checks"} left`,o&&i?`, so far ${o}`:"",i&&t.share!==null&&c("progress",{max:1,value:t.share,"aria-label":t.words??"looking"})]});let l=a?"; mends are being sought":"";return s.stop?c("p",{class:"verdict stop",children:["Do not dance yet: ",o,l]}):s.warn?c("p",{class:"verdict warn",children:["Dance with care: ",o,l]}):ft.value?.blocks.length?c("p",{class:"verdict good",children:"Clear, of what is looked at"}):c("p",{class:"verdict",children:"Nothing to look at yet"})}function kp(){return c("div",{class:"notices",role:"status",children:[be.value&&c("p",{class:"refused",role:"alert",children:[be.value.words," ",be.value.anyway&&c("button",{type:"button",class:"small",onClick:be.value.anyway,children:"Do it all the same"})," ",c("button",{type:"button",class:"small",onClick:()=>be.value=null,children:"Close"})]}),Dn.value&&c("p",{class:"warn",children:Dn.value}),nt.value?.kept.message&&c("p",{class:"warn",children:nt.value.kept.message}),hr.value.map(n=>c("p",{class:n.warn?"warn":"",children:n.words},n.id))]})}var PC=700;function wy(){Vt(()=>{mp()},[nt.value?.revision,Ii.value?.complete]);let n=Ai.value;return c("div",{class:"versions",children:n?c(OC,{}):c(Pt,{children:[c(IC,{}),c(DC,{}),c(UC,{})]})})}function IC(){let[n,t]=rt(""),[e,i]=rt(!1),s=async r=>{let o=await x_(n,r);i(o==="there"),o==="kept"&&t(a=>a===n?"":a)};return c("form",{class:"keep",onSubmit:r=>{r.preventDefault(),n.trim()&&s(!1)},children:[c("label",{for:"version-name",children:"Keep the show as it is now, and call it"}),c("p",{class:"row",children:[c("input",{id:"version-name",type:"text",value:n,maxLength:80,placeholder:"before the rehearsal",autocomplete:"off",onInput:r=>{t(r.currentTarget.value),i(!1)}}),c("button",{type:"submit",class:"main",disabled:!n.trim(),children:"Keep it"})]}),e&&c("p",{class:"fault",role:"alert",children:["There is a version \u201C",n.trim(),"\u201D already. ",c("button",{type:"button",class:"small",onClick:()=>{s(!0)},children:"Replace it"})," ",c("button",{type:"button",class:"small",onClick:()=>i(!1),children:"Keep both: choose another name"})]})]})}function DC(){let n=rr.value;return n?n.length?c("ul",{class:"kept-list","aria-label":"Versions",children:n.map(t=>c(NC,{version:t},t.name))}):c("p",{class:"quiet",children:["No version has been kept yet. Each becomes a show file of its own beside this one, such as \u201C",LC(nt.value.file,"before the rehearsal"),"\u201D."]}):c("p",{class:"quiet",children:"Looking for versions \u2026"})}function LC(n,t){let e=n.lastIndexOf(".");return e>0?`${n.slice(0,e)} (${t})${n.slice(e)}`:`${n} (${t})`}function NC({version:n}){let[t,e]=rt(!1),{stop:i=0,warn:s=0}=n.checked??{},r=[i?`${i} stop`:"",s?`${s} warn`:""].filter(Boolean).join(", ")||"nothing against it",o=n.checked?n.holds?r:`${r} when it was kept; the program or a file it reads may have changed since`:"not checked when it was kept";return c("li",{children:[c("h3",{children:n.name}),c("p",{class:"quiet",children:[c("time",{dateTime:n.time,children:vp(n.time)})," \xB7 ",o," \xB7 ",n.file]}),c("p",{children:n.same?"The show now is the same, letter by letter.":`Since then: ${n.line}.`}),c("p",{class:"row",children:[c("button",{type:"button",disabled:n.same,onClick:()=>{ph(`version:${n.name}`,sr)},children:["Compare",c("span",{class:"unseen",children:[" ",n.name," with the show now"]})]}),c("button",{type:"button",disabled:n.same,onClick:()=>{gp({name:n.name},nt.value.revision)},title:"One step: Undo takes it back",children:["Go back to it",c("span",{class:"unseen",children:[" ",n.name]})]}),c("button",{type:"button","aria-expanded":t,onClick:()=>e(!t),children:["Delete",c("span",{class:"unseen",children:[" ",n.name]})]})]}),t&&c("p",{class:"fault",role:"alert",children:["Delete \u201C",n.name,"\u201D for good? Its file goes. ",c("button",{type:"button",class:"small",onClick:()=>{b_(n.name)},children:"Delete it"})," ",c("button",{type:"button",class:"small",onClick:()=>e(!1),children:"Leave it"})]})]})}function My(){let n=Qn.value,t=Sn.value,e=_o.value;if(!n||t===null||!e.length)return null;let i=e.indexOf(t);return c("div",{class:"step-bar",role:"group","aria-label":"From change to change",children:[c("button",{type:"button",class:"small",disabled:i===0,onClick:()=>xo(-1),"aria-label":"Previous change",children:"\u2191"}),c("button",{type:"button",class:"small",disabled:i===e.length-1,onClick:()=>xo(1),"aria-label":"Next change",children:"\u2193"}),c("p",{children:[i+1," of ",e.length,": ",c("b",{children:yo[n.changes[t].kind]})," ",n.changes[t].who.join(", ")," ",n.changes[t].words]}),c("button",{type:"button",class:"small",onClick:al,children:"Close"})]})}function UC(){let[n,t]=rt("file"),[e,i]=rt(sr),[s,r]=rt({at:0,steps:[]});Vt(()=>{ie("history").then(r,()=>{})},[nt.value?.revision]);let o=/^step:(\d+)$/.exec(n);return c("fieldset",{class:"any",children:[c("legend",{children:"Compare any two"}),c("label",{children:["What was ",c(xy,{value:n,set:t,steps:s})]}),c("label",{children:["with what is ",c(xy,{value:e,set:i,steps:s})]}),c("p",{class:"row",children:[c("button",{type:"button",class:"main",disabled:n===e,onClick:()=>{ph(n,e)},children:"Compare"}),o&&c("button",{type:"button",title:"One step: Undo takes it back",onClick:()=>{gp({step:Number(o[1])},nt.value.revision)},children:"Go back to that step"})]})]})}function xy({value:n,set:t,steps:e}){let i=e.steps.map((s,r)=>({...s,k:r+1})).reverse();return c("select",{value:n,onChange:s=>t(s.currentTarget.value),children:[c("option",{value:sr,children:"the show now"}),c("option",{value:"file",children:"the file as it was saved"}),(rr.value??[]).length>0&&c("optgroup",{label:"Versions",children:rr.value.map(s=>c("option",{value:`version:${s.name}`,children:s.name},s.name))}),c("optgroup",{label:"Steps",children:[i.map(s=>c("option",{value:`step:${s.k}`,children:["after ",s.k,": ",s.words,s.k>e.at?" (undone)":"",", ",vp(s.time)]},s.k)),c("option",{value:"step:0",children:"as it was opened"})]})]})}function OC(){let n=Ai.value,t=Qn.value,e=[n.old,n.new].some(i=>i===sr||i==="file");return Vt(()=>{if(!e||!Qn.value)return;let i=setTimeout(()=>{ph(n.old,n.new,!0)},PC);return()=>clearTimeout(i)},[nt.value?.revision,nt.value?.saved,Ii.value?.complete]),c("section",{class:rl.value||!Li.value?"compared older":"compared","aria-label":"Comparison",children:[c("p",{class:"row",children:c("button",{type:"button",onClick:al,children:"Back to the versions"})}),t?c(kC,{found:t}):c("p",{class:"quiet",role:"status",children:"The two are put on the song and compared \u2026"})]})}function kC({found:n}){let t=_o.value,e=Sn.value===null?-1:t.indexOf(Sn.value),i=n.eights;return c(Pt,{children:[c("h3",{children:[So(n.new),", compared with ",n.old]}),c("p",{children:[So(n.line),"."]}),n.faults.map(s=>c("p",{class:"fault",children:[So(s),"."]},s)),t.length>0&&c("p",{class:"row",role:"group","aria-label":"From change to change",children:[c("button",{type:"button",disabled:e===0,onClick:()=>xo(-1),title:"Alt + arrow up",children:"Previous change"}),c("button",{type:"button",disabled:e===t.length-1,onClick:()=>xo(1),title:"Alt + arrow down",children:"Next change"}),c("span",{class:"quiet",children:[e>=0?`${e+1} of ${t.length}`:`${t.length} in all`," \xB7 Alt + \u2191 \u2193"]})]}),c("div",{class:"change-list",onKeyDown:zC,children:[i.map((s,r)=>c("div",{children:[s.section!==i[r-1]?.section&&c("h4",{children:s.section||"Before the first section"}),c("div",{class:"change-row",children:[c("b",{children:["bar ",s.bar]}),c("ul",{children:s.changes.map(o=>c(Sy,{change:n.changes[o],k:o},o))})]})]},`${s.bar} ${s.section}`)),n.elsewhere.length>0&&c(FC,{found:n})]}),c(BC,{found:n})]})}var by={dance:"What is danced",entries:"How the dance is put down",floor:"Where everybody stands and walks",song:"The song and its count",cast:"The cast",crew:"The crew",place:"The place",fire:"Fire",rules:"Rules and limits",other:"Title and other headings",writing:"How it is written"};function FC({found:n}){let t=Object.keys(by).map(e=>[e,n.elsewhere.filter(i=>n.changes[i].subject===e)]).filter(([,e])=>e.length);return c(Pt,{children:t.map(([e,i])=>c("div",{children:[c("h4",{children:by[e]}),c("ul",{class:"change-row",children:i.map(s=>c(Sy,{change:n.changes[s],k:s},s))})]},e))})}function Sy({change:n,k:t}){let e=Sn.value===t;return c("li",{children:[c("button",{type:"button",class:`change ${n.kind} ${e?"on":""}`,"data-change":t,"aria-current":e?"true":void 0,"aria-label":`${ol[n.kind]}. ${cl(n,t)}`,onClick:()=>ll(t),children:[c("b",{"aria-hidden":"true",children:yo[n.kind]})," ",n.position&&c("span",{class:"when",children:n.position})," ",n.who.length>0&&c("em",{children:n.who.join(", ")})," ",n.words]}),e&&n.moves.length>0&&c("button",{type:"button",class:"small",onClick:()=>Kt.value="stage",children:"See it on the stage"})]})}function BC({found:n}){let{unknown:t,changes:e,same:i,unseen:s}=n.findings;return n.identical&&!e.length?null:c("div",{class:"findings-compared",children:[c("h4",{children:"What stands against it"}),t.length?t.map(r=>c("p",{class:"quiet",children:[So(r),", so findings are not compared."]},r)):c(Pt,{children:[c("p",{class:"quiet",children:[i===1?"1 finding":`${i} findings`," as before",e.length?":":"; none new, none gone."]}),c("ul",{children:e.map((r,o)=>c("li",{class:`change ${r.kind}`,children:[c("b",{"aria-hidden":"true",children:yo[r.kind]})," ",c("em",{children:ol[r.kind]})," ",So(r.severity)," ",r.position," ",r.message,r.before&&c("span",{class:"quiet",children:[" Before: ",r.before]})]},o))}),s.map(r=>c("p",{class:"quiet",children:So(r)},r))]})]})}var So=n=>n.slice(0,1).toUpperCase()+n.slice(1);function zC(n){if(!["ArrowDown","ArrowUp"].includes(n.key)||n.altKey)return;let t=[...n.currentTarget.querySelectorAll("button.change")],e=t.indexOf(n.target);e<0||(n.preventDefault(),t[Math.min(Math.max(e+(n.key==="ArrowDown"?1:-1),0),t.length-1)].focus())}function Ty(n){return n.target.matches("select, textarea, input:not([type=range]):not([type=checkbox]):not([type=radio])")||!Qn.value||!n.altKey||n.ctrlKey||n.metaKey||!["ArrowDown","ArrowUp"].includes(n.key)?!1:(xo(n.key==="ArrowDown"?1:-1),!0)}var Fp={findings:"Findings",stage:"Stage",dance:"Dance",count:"Count",who:"Who",draft:"Draft",forms:"Show",print:"Print",versions:"Versions",text:"Text"};function VC(){let n=nt.value;return n?n.text.trim()?c(Pt,{children:[c("a",{class:"skip",href:"#side",children:"Skip the sheet"}),c(yy,{}),c(_y,{}),c(sy,{}),c("main",{children:[c("section",{class:"left","aria-label":"The sheet",children:[ni.value&&n.readable&&c("p",{class:"fault",children:ni.value}),c(jm,{}),c(Xm,{}),ft.value?c(W_,{}):c("p",{class:"quiet",children:n.readable?ni.value?"":"The show is being put on its song \u2026":"The file cannot be read as a show: mend it under Text."})]}),c("aside",{id:"side",class:"side",children:[c(J_,{}),c("div",{class:"tabs",role:"tablist","aria-label":"Beside the sheet",onKeyDown:HC,children:Object.keys(Fp).map(t=>c("button",{id:`tab-${t}`,type:"button",role:"tab","aria-selected":Kt.value===t,"aria-controls":"panel",tabIndex:Kt.value===t?0:-1,onClick:()=>Kt.value=t,children:[Fp[t],t==="findings"&&c(GC,{})]},t))}),c("div",{id:"panel",class:"panel",role:"tabpanel",tabIndex:0,"aria-labelledby":`tab-${Kt.value}`,children:[Kt.value==="findings"&&c(r_,{}),Kt.value==="stage"&&c(ly,{}),Kt.value==="dance"&&c(s_,{}),Kt.value==="count"&&c(fg,{}),Kt.value==="who"&&c(fy,{}),Kt.value==="draft"&&c(Hm,{}),Kt.value==="forms"&&c(p_,{}),Kt.value==="print"&&c(ny,{}),Kt.value==="versions"&&c(wy,{}),Kt.value==="text"&&c(hy,{})]})]})]}),c(My,{}),c(ag,{}),c(kp,{}),c(Op,{}),c(m_,{})]}):c(Pt,{children:[n.new?c(Jm,{}):c(ry,{}),c(kp,{}),c(Op,{})]}):c("main",{class:"opening",children:c("p",{children:Dn.value??"Opening the show \u2026"})})}function GC(){let n=(ei.value?.entries??[]).filter(t=>t.severity!=="note").length;return n?c("b",{class:"number",children:n}):null}function HC(n){let t=Object.keys(Fp),e={ArrowLeft:-1,ArrowRight:1}[n.key];e&&(n.preventDefault(),Kt.value=t[(t.indexOf(Kt.value)+e+t.length)%t.length],setTimeout(()=>document.getElementById(`tab-${Kt.value}`)?.focus()))}addEventListener("keydown",n=>{let t=n.target,e=t.matches("textarea, input:not([type=range]):not([type=checkbox]):not([type=radio])"),i=n.ctrlKey||n.metaKey,s=n.key.toLowerCase();Ty(n)?n.preventDefault():i&&s==="s"?(n.preventDefault(),nt.value?.text.trim()&&yr()):i&&!e&&s==="z"?(n.preventDefault(),n.shiftKey?Us():_r()):i&&!e&&s==="y"?(n.preventDefault(),Us()):!i&&!e&&n.key===" "&&!t.matches("button, input, summary")&&(n.preventDefault(),Ce.toggle())});addEventListener("beforeunload",n=>{(nt.value&&!nt.value.saved&&nt.value.autosave==="journal"||Ns.value)&&!Dn.value&&n.preventDefault()});async function WC(){try{await cm(),await Il()}catch(n){Dn.value=n instanceof Me&&n.status===403?"This address has lost its key: open the page again from the terminal, where sequencer open printed it.":String(n instanceof Error?n.message:n);return}nt.value.readable||(Kt.value="text"),Ll(),td(),ed().catch(()=>{}),kl().catch(()=>{}),gy().catch(()=>{}),ie("patterns").then(n=>dr.value=n.patterns,()=>{});for(let n=0;n<5;){try{await dm((t,e)=>{n=0,Uo.value=!1,t==="end"&&(Dn.value=e.message),t==="errand"&&(e.kind==="begin"?Zm(e):Vm(e)),zm(t,e)})}catch{n+=1}if(Dn.value)return;Uo.value=!0,n+=1,await new Promise(t=>setTimeout(t,500*n))}Dn.value="The program behind this page has ended. Run sequencer open again: nothing is lost."}lm(c(VC,{}),document.getElementById("page"));WC();})();
